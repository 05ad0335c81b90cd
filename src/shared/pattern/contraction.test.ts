import { describe, expect, test } from 'vitest';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { PartId } from '../base/ids.ts';
import { buildOf } from '../build/look-up.ts';
import { defaultPattern, type Pattern } from '../build/pattern.ts';
import { alloyNamed } from '../tables/alloys.ts';
import { type ContractionGiven, contractionsOf, strayOf } from './contraction.ts';
import { contractionRows, type MeasuredContraction, measuredPairs } from './measured-contraction.ts';
import { readContraction } from './read-contraction.ts';

const alloy = alloyNamed('A356')!;
const given: ContractionGiven = {
  casting: { contraction: ['', '', ''] },
  material: 'A356',
  alloy,
  here: [],
  before: [],
};
const row = (over: Partial<MeasuredContraction> = {}): MeasuredContraction => ({
  alloy: 'LM25',
  axis: 'X',
  percent: 1.1,
  count: 4,
  spread: 0.2,
  ...over,
});

describe('a contraction as written', () => {
  test.each([
    ['1.3', 1.3],
    ['1.3 %', 1.3],
    ['13 mm/m', 1.3],
    // Dooley, Applied Science for Metal Workers, ch. XXXI: 7/32 inch per foot is 1.82 %, 3/16 1.56 %, 5/32 1.30 %, 3/32 0.78 %.
    ['7/32 in/ft', 1.82],
    ['3/16"/ft', 1.56],
    ['5/32 in/ft', 1.3],
    ['3/32 in/ft', 0.78],
    ['0', 0],
  ])('%s', (text, percent) => {
    const read = readContraction(text);
    expect(read.ok && read.value).toBeCloseTo(percent, 2);
  });
  test.each(['much', '1.3 kg', '-1', '25', '1.3 + x'])('%s is not one', (text) => {
    expect(readContraction(text)).toEqual({ ok: false, error: text });
  });
});

describe('which contraction counts', () => {
  test('the alloy’s usual one, with the published range', () => {
    const [x] = contractionsOf(given);
    expect(x).toMatchObject({ percent: 1.3, from: 'alloy', status: 'read', least: 1.25, most: 1.82, unknown: [] });
  });
  test('measured in earlier builds goes before it, in this build before that, written before all', () => {
    const before = [row({ percent: 1.2 })];
    expect(contractionsOf({ ...given, before })[0]).toMatchObject({ percent: 1.2, from: 'measured before' });
    const here = [row()];
    expect(contractionsOf({ ...given, before, here })[0]).toMatchObject({
      percent: 1.1,
      from: 'measured here',
      least: 1,
      most: 1.2000000000000002,
    });
    const casting = { contraction: ['1 %', '', ''] as [string, string, string] };
    expect(contractionsOf({ ...given, before, here, casting })[0]).toMatchObject({ percent: 1, from: 'written' });
  });
  test('along the axis before along others', () => {
    const here = [row(), row({ axis: 'Z', percent: 1.4, count: 2 })];
    const [x, y, z] = contractionsOf({ ...given, here });
    expect(x.percent).toBe(1.1);
    expect(z.percent).toBe(1.4);
    expect(y.percent).toBeCloseTo((4 * 1.1 + 2 * 1.4) / 6, 12);
    expect(y.source).toBe('measured on 6 lengths along other axes');
  });
  test('of another alloy counts for nothing', () => {
    expect(contractionsOf({ ...given, here: [row({ alloy: 'grey iron' })] })[0].from).toBe('alloy');
  });
  test('an alloy that nobody knows, and a text that cannot be read, are asked for', () => {
    const casting = { contraction: ['lots', '', '1.5'] as [string, string, string] };
    const [x, y, z] = contractionsOf({ ...given, casting, alloy: undefined, material: 'moonmetal' });
    expect(x.unknown).toEqual([
      { is: 'written', field: 'contraction/0', text: 'lots' },
      { is: 'alloy', name: 'moonmetal' },
    ]);
    expect(y).toMatchObject({ percent: undefined, unknown: [{ is: 'alloy', name: 'moonmetal' }] });
    expect(z).toMatchObject({ percent: 1.5, unknown: [] });
  });
});

test('the spread of published values on 200 mm is about half a millimetre', () => {
  // 1.25 to 1.82 % about 1.3 %: casting of a pattern of 202.6 mm.
  const { minus, plus } = strayOf(contractionsOf(given)[0], 200);
  expect(minus).toBeCloseTo(202.6 / 1.0182 - 200, 12);
  expect(plus).toBeCloseTo(202.6 / 1.0125 - 200, 12);
  expect(plus - minus).toBeGreaterThan(0.5);
  expect(plus - minus).toBeLessThan(1.3);
});

describe('what patterns and castings tell', () => {
  const sketch = sketchBodies();
  const part = sketch.part.id;
  sketch.at('X', 200);
  sketch.at('Z', 100);
  sketch.size('diameter', 40);
  const build = buildOf(sketch.records());
  const numbers = { record: (id: Parameters<typeof build.get>[0]) => build.get(id) };
  const pattern: Pattern = {
    ...defaultPattern('pattern:p' as Pattern['id'], part, 'first', 1),
    measured: [
      { of: 'dimension:b-X200', value: '202.6' },
      { of: 'dimension:b-Z100', value: '101.5 mm' },
      { of: 'dimension:b-diameter-40', value: '40.5' },
      { of: 'box:X', value: '205' },
    ],
    cast: [
      { of: 'dimension:b-X200', value: '200.2' },
      { of: 'dimension:b-Z100', value: '100' },
      { of: 'dimension:b-diameter-40', value: '40' },
      { of: 'box:X', value: 'about 203' },
      { of: 'dimension:gone', value: '30' },
    ],
  };
  const pairs = measuredPairs([pattern], (id: PartId) => (id === part ? 'LM25' : undefined), numbers, 'mm');

  test('only lengths along an axis that were read on both', () => {
    expect(pairs.map(({ axis, patternMm, castMm }) => [axis, patternMm, castMm])).toEqual([
      ['X', 202.6, 200.2],
      ['Z', 101.5, 100],
    ]);
  });
  test('rows by alloy and axis, long lengths counting for more', () => {
    const rows = contractionRows([...pairs, { alloy: 'lm25', axis: 'X', patternMm: 101, castMm: 100 }]);
    expect(rows[0]).toMatchObject({ alloy: 'LM25', axis: 'X', count: 2 });
    expect(rows[0]!.percent).toBeCloseTo((100 * (303.6 - 300.2)) / 300.2, 12);
    expect(rows[0]!.spread).toBeCloseTo(100 * (202.6 / 200.2 - 1) - 1, 12);
    expect(rows[1]!.percent).toBeCloseTo(1.5, 12);
  });
  test('short lengths and slips are passed over', () => {
    expect(contractionRows([{ alloy: 'a', axis: 'X', patternMm: 10.3, castMm: 10 }])).toEqual([]);
    expect(contractionRows([{ alloy: 'a', axis: 'X', patternMm: 301, castMm: 100 }])).toEqual([]);
  });
});
