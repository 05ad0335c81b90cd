import { describe, expect, test } from 'vitest';
import { partId } from '../../../../../tests/support/sketch-build.ts';
import type { DimensionId, StationId } from '../../../../shared/base/ids.ts';
import type { PartLink } from '../../../engine/views/links.ts';
import type { OpenedPart } from '../../../engine/views/opened.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { listRows } from '../list/rows.ts';
import { edgesOf, labelOf, layoutRequest, nodesOf, smooth } from './graph.ts';
import { layoutMap } from './layout.ts';
import { neighbour } from './neighbour.ts';
import { rowMiddle, sheetOrder, sheetRows } from './sheet-rows.ts';
import { linkInWords } from './words.ts';

const dimension = (name: string) => `dimension:${name}` as DimensionId;
const part = (name: string): PartLine => ({
  id: partId(name),
  name,
  number: '',
  make: 'cast',
  material: '',
  quantity: 1,
  gates: [{ gate: 'cut', state: 'open', reasons: 0 }],
  counts: { stop: 0, caution: 0, note: 0, accepted: 0 },
  stations: 0,
  dimensions: 0,
});
const pair = (name: string, by: string) => ({ dimension: dimension(name), name, by: dimension(by), byName: by });
const link = (from: string, to: string, pairs: PartLink['pairs']): PartLink => ({
  key: `part:${from}>part:${to}`,
  from: partId(from),
  to: partId(to),
  pairs,
  marks: { stop: 0, caution: 0, note: 0 },
});
const line = (name: string, places?: string) => ({
  id: dimension(name),
  name,
  value: '1 mm',
  mark: undefined,
  source: 'drawn' as const,
  places: places === undefined ? undefined : (`station:${places}` as StationId),
  touches: [],
  hangsOn: [],
});
const station = (name: string) => ({
  id: `station:${name}` as StationId,
  name,
  value: '1 mm',
  mark: undefined,
  datum: name === 'foot',
  touches: [],
  hangsOn: [],
});
const sheet: OpenedPart = {
  id: partId('a'),
  groups: [
    { axis: 'X', dimensions: [line('spare'), line('rise', 'head')], stations: [station('foot'), station('head')] },
    { axis: undefined, dimensions: [line('bore')], stations: [] },
  ],
};
const parts = ['a', 'b', 'c'].map(part);
const links = [link('a', 'b', [pair('bore', 'shaft'), pair('rise', 'length'), pair('bore', 'length')])];
const scene = (opened: Readonly<Record<string, OpenedPart>>) => ({
  parts,
  links,
  opened,
  layout: layoutMap(layoutRequest(parts, links, opened)),
  reach: undefined,
  part: partId('a'),
  subject: undefined,
});

describe('what stands on the map', () => {
  test('a label names what is taken, and how many more', () => {
    expect(labelOf(link('a', 'b', [pair('bore', 'shaft')]))).toBe('bore');
    expect(labelOf(links[0]!)).toBe('bore +1');
    expect(linkInWords(links[0]!)).toBe('2 dimensions: bore, rise');
    expect(labelOf(link('a', 'b', [pair('a very long name of a dimension', 'x')]))).toBe('a very long na…');
  });

  test('closed parts are joined by one line, an opened one by one line for each name', () => {
    expect(edgesOf(scene({})).map(({ data }) => data?.pairs.length)).toEqual([3]);
    const opened = scene({ 'part:a': sheet });
    const edges = edgesOf(opened);
    expect(edges.map(({ source, target, data }) => [source, target, data?.pairs[0]?.name])).toEqual([
      ['part:a', 'part:b', 'bore'],
      ['part:a', 'part:b', 'rise'],
      ['part:a', 'part:b', 'bore'],
    ]);
    // Each begins at its own row, on the left or right edge of the sheet.
    const box = opened.layout.boxes['part:a']!;
    for (const [i, name] of ['bore', 'rise', 'bore'].entries()) {
      const [x, y] = /^M(\S+) (\S+)/.exec(edges[i]!.data!.path)!.slice(1).map(Number);
      expect(y).toBeCloseTo(box.y + rowMiddle(sheetRows(sheet), dimension(name))!, 0);
      expect([box.x, box.x + box.width].some((edge) => Math.abs(edge - x!) < 0.1)).toBe(true);
    }
  });

  test('what is lit stands out, the rest is dimmed', () => {
    const reach = {
      id: partId('a'),
      way: 'touches' as const,
      parts: [partId('a'), partId('b')],
      ids: [dimension('bore'), dimension('shaft')],
      links: ['part:a>part:b'],
      sentence: '',
    };
    expect(nodesOf({ ...scene({}), reach }).map(({ data }) => data.look)).toEqual(['lit', 'lit', 'dim']);
    expect(edgesOf({ ...scene({}), reach }).map(({ data }) => data?.look)).toEqual(['lit']);
    const looks = edgesOf({ ...scene({ 'part:a': sheet }), reach }).map(({ data }) => data?.look);
    expect(looks).toEqual(['lit', 'dim', 'dim']);
  });

  test('a part that is not laid out yet waits', () => {
    const laid = scene({});
    expect(nodesOf({ ...laid, parts: [...parts, part('new')] }).map(({ id }) => id)).toEqual([
      'part:a',
      'part:b',
      'part:c',
    ]);
  });

  test('a line is upright at each of its points', () => {
    const at = (x: number, y: number) => ({ x, y });
    expect(smooth([at(0, 0), at(10, 20), at(10, 30)])).toBe('M0 0 C0 10 10 10 10 20 L10 30');
    expect(smooth([at(1, 1)])).toBe('');
  });
});

test('a sheet shows each dimension beside the station that it places, the rest after', () => {
  const rows = sheetRows(sheet).map((row) =>
    row.kind === 'head' ? row.title : [row.dimension?.name, row.station?.name],
  );
  expect(rows).toEqual([
    'Axis X',
    [undefined, 'foot'],
    ['rise', 'head'],
    ['spare', undefined],
    'Sizes',
    ['bore', undefined],
  ]);
  expect(sheetOrder(sheetRows(sheet))).toEqual([
    'station:foot',
    'dimension:rise',
    'station:head',
    'dimension:spare',
    'dimension:bore',
  ]);
});

test('the list has every part, link, station and dimension of the map', () => {
  const rows = listRows(parts, links, { 'part:a': sheet }, { unfolded: new Set(), folded: new Set(['part:a sizes']) });
  expect(rows.map(({ key, level, at, of, expanded }) => [key, level, at, of, expanded])).toEqual([
    ['part:a', 1, 1, 3, true],
    ['part:a feeds part:b', 2, 1, 3, undefined],
    ['part:a X', 2, 2, 3, true],
    ['station:foot', 3, 1, 4, undefined],
    ['station:head', 3, 2, 4, undefined],
    ['dimension:spare', 3, 3, 4, undefined],
    ['dimension:rise', 3, 4, 4, undefined],
    ['part:a sizes', 2, 3, 3, false],
    ['part:b', 1, 2, 3, false],
    ['part:c', 1, 3, 3, false],
  ]);
});

test('an arrow key goes to the nearest part that way, straight before aside', () => {
  const box = (x: number, y: number) => ({ x, y, width: 10, height: 10 });
  const boxes = {
    here: box(100, 100),
    below: box(110, 200),
    aside: box(200, 150),
    far: box(100, 600),
    left: box(0, 100),
  };
  expect(neighbour(boxes, 'here', 'down')).toBe('below');
  expect(neighbour(boxes, 'here', 'right')).toBe('aside');
  expect(neighbour(boxes, 'here', 'left')).toBe('left');
  expect(neighbour(boxes, 'here', 'up')).toBeUndefined();
  expect(neighbour(boxes, 'below', 'up')).toBe('here');
});
