import { describe, expect, test } from 'vitest';
import { dimensionId, partId, sketch, stationId } from '../../../tests/support/sketch-build.ts';
import type { BuildRecord } from '../build/records.ts';
import { createDrawing } from './create-drawing.ts';

const at = (drawing: ReturnType<typeof createDrawing>, part = 'bed') =>
  Object.fromEntries(drawing.axesOf(partId(part))[0]!.stations.map(({ id, at }) => [id.slice(8), at]));

describe('placing', () => {
  test('stations stand where their dimensions put them, whichever way they are written', () => {
    const drawing = createDrawing(
      sketch()
        .part('bed')
        .stations('a', 'b', 'c')
        .between('ab', 'a', 'b', '10', { limits: '+0.2/-0.1' })
        .between('cb', 'c', 'b', '-5.5', { limits: '±0.3' })
        .build(),
    );
    const [x] = drawing.axesOf(partId('bed'));
    expect(at(drawing)).toEqual({ a: 0, b: 10, c: 15.5 });
    expect(x!.datum).toBe(stationId('a'));
    expect(x!.stations[2]!.path).toEqual([dimensionId('ab'), dimensionId('cb')]);
    const { band } = x!.stations[2]!;
    expect(band.minus).toBeCloseTo(-0.4, 12);
    expect(band.plus).toBeCloseTo(0.5, 12);
    expect(band.rss).toBeCloseTo(Math.hypot(0.15, 0.3), 12);
    expect(band.rssCentre).toBeCloseTo(0.05, 12);
    expect(x!.loops).toEqual([]);
    expect(x!.ties).toEqual([]);
  });

  test('a group that nothing ties in floats from its own origin, with the empty dimension that would tie it', () => {
    const drawing = createDrawing(
      sketch()
        .part('bed')
        .stations('a', 'b', 'c', 'd')
        .between('ab', 'a', 'b', '10')
        .between('bc', 'b', 'c', '')
        .between('cd', 'c', 'd', '4')
        .build(),
    );
    const [x] = drawing.axesOf(partId('bed'));
    expect(x!.groups).toEqual([
      { origin: stationId('a'), stations: [stationId('a'), stationId('b')] },
      { origin: stationId('c'), stations: [stationId('c'), stationId('d')] },
    ]);
    expect(x!.ties).toEqual([
      { from: stationId('b'), to: stationId('c'), dimension: dimensionId('bc'), reason: 'empty-dimension' },
    ]);
  });

  test('without one, the pair nearest in the list is offered, the datum last', () => {
    const drawing = createDrawing(
      sketch()
        .part('bed')
        .station('c', { form: 'centreline' })
        .station('a', { datum: true })
        .station('b')
        .between('ab', 'a', 'b', '10')
        .build(),
    );
    expect(drawing.axesOf(partId('bed'))[0]!.ties).toEqual([
      { from: stationId('b'), to: stationId('c'), dimension: undefined, reason: 'nearest-in-list' },
    ]);
  });
});

describe('contradictions', () => {
  const base = (bc: string, extra: Parameters<ReturnType<typeof sketch>['between']>[4] = {}) =>
    sketch()
      .part('bed')
      .stations('a', 'b', 'c')
      .between('ab', 'a', 'b', '10', { limits: '±0.1' })
      .between('bc', 'b', 'c', bc, { limits: '±0.1', ...extra })
      .between('ac', 'a', 'c', '30', { limits: '±0.1' });

  test('a loop that closes within its limits is redundant', () => {
    const [x] = createDrawing(base('20.3').build()).axesOf(partId('bed'));
    expect(x!.conflicts).toEqual([]);
    expect(x!.loops).toHaveLength(1);
    expect(x!.loops[0]!.verdict).toBe('redundant');
    expect(Math.abs(x!.loops[0]!.closingError)).toBeCloseTo(0.3, 9);
  });

  test('one that cannot close is a contradiction; a slip comes first among the suspects', () => {
    const [x] = createDrawing(base('508').build()).axesOf(partId('bed'));
    expect(x!.conflicts).toHaveLength(1);
    const [conflict] = x!.conflicts;
    expect(conflict!.dimensions).toEqual(['ab', 'bc', 'ac'].map(dimensionId));
    expect(conflict!.loop.closingError).toBeCloseTo(488, 9);
    expect(conflict!.suspects[0]).toEqual({ dimension: dimensionId('bc'), wouldBe: 20, slip: 'mm-for-inch' });
    expect(conflict!.suspects).toHaveLength(3);
  });

  test('a dimension that alone explains two failing loops is the only suspect, and nothing is placed by it', () => {
    const drawing = createDrawing(
      sketch()
        .part('bed')
        .stations('a', 'b', 'c', 'd')
        .between('ac', 'a', 'c', '33')
        .between('ab', 'a', 'b', '10')
        .between('bc', 'b', 'c', '20')
        .between('cd', 'c', 'd', '5')
        .between('ad', 'a', 'd', '35')
        .build(),
    );
    const [x] = drawing.axesOf(partId('bed'));
    expect(x!.conflicts).toHaveLength(1);
    expect(x!.conflicts[0]!.suspects).toEqual([{ dimension: dimensionId('ac'), wouldBe: 30, slip: undefined }]);
    expect(at(drawing)).toEqual({ a: 0, b: 10, c: 30, d: 35 });
  });

  test('a dimension from a station to itself contradicts itself', () => {
    const drawing = createDrawing(sketch().part('bed').stations('a').between('aa', 'a', 'a', '3').build());
    const [conflict] = drawing.axesOf(partId('bed'))[0]!.conflicts;
    expect(conflict!.dimensions).toEqual([dimensionId('aa')]);
    expect(conflict!.suspects).toEqual([{ dimension: dimensionId('aa'), wouldBe: 0, slip: undefined }]);
  });
});

describe('values', () => {
  const values = () =>
    sketch()
      .part('column')
      .size('Bore', 'diameter', '40')
      .part('bed')
      .size('wall', 'length', '6')
      .size('boss', 'diameter', 'bore of Column + 2*WALL')
      .size('lost', 'length', 'wal')
      .size('away', 'length', 'x of colum')
      .size('hangs', 'length', 'lost + 1 mm')
      .size('p', 'length', 'q + 1 mm')
      .size('q', 'length', 'p + 1 mm')
      .size('r', 'length', 'q')
      .size('self', 'length', 'self')
      .size('bare', 'length', '');

  test('formulas, names, rings and what waits for them', () => {
    const drawing = createDrawing(values().build());
    const problem = (name: string) => drawing.dimension(dimensionId(name)).problem;
    expect(drawing.dimension(dimensionId('boss')).value).toBe(52);
    expect(drawing.dimension(dimensionId('boss')).references).toEqual([dimensionId('Bore'), dimensionId('wall')]);
    expect(problem('lost')).toMatchObject({ why: 'text', problem: { code: 'name-unknown', data: { name: 'wal' } } });
    expect(problem('away')).toMatchObject({ why: 'text', problem: { code: 'part-unknown', data: { name: 'colum' } } });
    expect(problem('hangs')).toEqual({ why: 'waiting', causes: [dimensionId('lost')] });
    expect(problem('p')).toEqual({ why: 'ring', ring: [dimensionId('p'), dimensionId('q')] });
    expect(problem('r')).toEqual({ why: 'waiting', causes: [dimensionId('q')] });
    expect(problem('self')).toEqual({ why: 'ring', ring: [dimensionId('self')] });
    expect(problem('bare')).toEqual({ why: 'empty' });
    expect(drawing.rings()).toEqual([[dimensionId('p'), dimensionId('q')], [dimensionId('self')]]);
    expect(drawing.namedBy(dimensionId('q'))).toEqual([dimensionId('p'), dimensionId('r')]);
    expect(drawing.touches(dimensionId('wall')).dimensions).toEqual([dimensionId('boss')]);
    expect(drawing.hangsOn(dimensionId('r')).dimensions).toEqual([dimensionId('p'), dimensionId('q')]);
  });

  test('an edit changes what hangs on it and keeps the identity of all else', () => {
    const records = values().records();
    const drawing = createDrawing(values().build());
    const ids = records.flatMap((record) => (record.kind === 'dimension' ? [record.id] : []));
    const before = new Map(ids.map((id) => [id, drawing.dimension(id)]));
    const from = records.find((record) => record.id === dimensionId('wall')) as BuildRecord & { kind: 'dimension' };
    const change = drawing.update({ added: [], removed: [], updated: [[from, { ...from, value: '7' }]] });
    expect([...change.dimensions].sort()).toEqual([dimensionId('boss'), dimensionId('wall')]);
    expect(drawing.dimension(dimensionId('boss')).value).toBe(54);
    for (const id of ids) {
      expect(drawing.dimension(id) === before.get(id), id).toBe(!change.dimensions.includes(id));
    }
  });

  test('two dimensions of one name are ambiguous to formulas', () => {
    const drawing = createDrawing(values().size('WALL', 'length', '9').build());
    expect(drawing.dimension(dimensionId('boss')).problem).toMatchObject({ problem: { code: 'name-ambiguous' } });
  });
});
