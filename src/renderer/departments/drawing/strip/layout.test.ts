import { describe, expect, test } from 'vitest';
import type { DimensionId, StationId } from '../../../../shared/base/ids.ts';
import type { StripArc, StripModel, StripStation, StripTie } from '../../../engine/views/strip.ts';
import { arcPath, fitLook, groupOffsets, layStrip, scaleMarks, zoomLook } from './layout.ts';

const station = (name: string, at: number, group = 0): StripStation => ({
  id: `station:${name}` as StationId,
  name,
  form: 'face',
  datum: at === 0 && group === 0,
  group,
  at,
  minus: 0,
  plus: 0,
  atText: `${at} mm`,
  bandText: '',
});

const arc = (from: string, to: string): StripArc => ({
  id: `dimension:${from}-${to}` as DimensionId,
  name: `${from} to ${to}`,
  from: `station:${from}` as StationId,
  to: `station:${to}` as StationId,
  text: '',
  source: 'drawn',
  role: 'placing',
});

const model = (stations: readonly StripStation[], arcs: readonly StripArc[], groups = 1): StripModel => ({
  axis: 'X',
  datum: stations[0]?.id,
  stations,
  groups,
  arcs,
  ties: [],
  conflicts: [],
});

const simple = model(
  [station('a', 0), station('b', 20), station('c', 100)],
  [arc('a', 'b'), arc('b', 'c'), arc('a', 'c')],
);

describe('a strip', () => {
  test('stations stand at their true places: distances on the sheet are to scale', () => {
    const look = fitLook(simple, 800);
    const { ticks } = layStrip(simple, look, 800, 300);
    const [a, b, c] = ticks.map((tick) => tick.x) as [number, number, number];
    expect((b - a) / (c - a)).toBeCloseTo(0.2, 10);
    expect(a).toBeGreaterThan(0);
    expect(c).toBeLessThan(800);
    expect((a + c) / 2).toBeCloseTo(400, 6);
  });

  test('an arc over others stands above them', () => {
    const heights = Object.fromEntries(
      layStrip(simple, fitLook(simple, 800), 800, 300).arcs.map((placed) => [placed.arc.id, placed.height]),
    );
    expect(heights['dimension:a-c']).toBeGreaterThan(heights['dimension:a-b']!);
    expect(heights['dimension:a-b']).toBe(heights['dimension:b-c']);
  });

  test('arcs that overlap never share a height', () => {
    const stations = Array.from({ length: 9 }, (_, i) => station(`s${i}`, i * i));
    const arcs = stations.flatMap((a, i) => stations.slice(i + 1).map((b) => arc(a.name, b.name)));
    const { arcs: placed } = layStrip(model(stations, arcs), { scale: 8, left: -2 }, 800, 300);
    for (const a of placed)
      for (const b of placed)
        if (a !== b && Math.max(a.x1, b.x1) < Math.min(a.x2, b.x2) - 1e-6) expect(a.height).not.toBe(b.height);
  });

  test('an arc drawn against the axis is laid like one along it', () => {
    const turned = model(simple.stations, [arc('b', 'a'), arc('c', 'b'), arc('c', 'a')]);
    const look = fitLook(simple, 800);
    const heights = (m: StripModel) => layStrip(m, look, 800, 300).arcs.map(({ height }) => height);
    expect(heights(turned)).toEqual(heights(simple));
  });

  test('names never overlap: one that has no room goes a row lower', () => {
    const crowded = model(
      Array.from({ length: 12 }, (_, i) => station(`a rather long name ${i}`, i)),
      [],
    );
    const { ticks, nameRows } = layStrip(crowded, fitLook(crowded, 700), 700, 300);
    expect(nameRows).toBeGreaterThan(1);
    for (const a of ticks)
      for (const b of ticks)
        if (a.nameX < b.nameX && a.row === b.row) expect(b.nameX - a.nameX).toBeGreaterThan(a.station.name.length * 6);
  });

  test('a group that nothing ties floats to the right, apart from the datum’s, on a baseline of its own', () => {
    const apart = model(
      [station('a', 0), station('b', 40), station('p', 0, 1), station('q', 15, 1)],
      [arc('a', 'b'), arc('p', 'q')],
      2,
    );
    const offsets = groupOffsets(apart);
    expect(offsets[0]).toBe(0);
    expect(offsets[1]).toBeGreaterThan(40);
    const layout = layStrip(apart, fitLook(apart, 800), 800, 300);
    const [main, floating] = layout.bases;
    expect(floating!.x1).toBeGreaterThan(main!.x2);
    expect(floating!.y).toBeGreaterThan(main!.y);
    const x = (name: string) => layout.at.get(`station:${name}`)!.x;
    expect((x('q') - x('p')) / (x('b') - x('a'))).toBeCloseTo(15 / 40, 10);
  });

  test('a tall strip is drawn closer together in a low pane', () => {
    const stations = Array.from({ length: 8 }, (_, i) => station(`s${i}`, i));
    const nested = model(
      stations,
      stations.slice(1).map((to) => arc('s0', to.name)),
    );
    const low = layStrip(nested, fitLook(nested, 800), 800, 260);
    const high = layStrip(nested, fitLook(nested, 800), 800, 700);
    expect(low.height).toBeLessThanOrEqual(260);
    expect(high.height).toBeGreaterThan(low.height);
  });

  test('no station, one station: nothing breaks', () => {
    expect(layStrip(model([], []), fitLook(model([], []), 800), 800, 300).ticks).toEqual([]);
    const one = model([station('a', 0)], []);
    const { ticks } = layStrip(one, fitLook(one, 800), 800, 300);
    expect(Number.isFinite(ticks[0]?.x)).toBe(true);
  });
});

test('the place under the pointer stays there while zooming', () => {
  const look = { scale: 3, left: -5 };
  const at = (l: typeof look) => l.left + 240 / l.scale;
  expect(at(zoomLook(look, 1.7, 240))).toBeCloseTo(at(look), 10);
});

test('the scale has round marks, in mm and in inches', () => {
  const mm = scaleMarks({ scale: 2, left: -10 }, 800, 1);
  expect(mm.map(({ label }) => label)).toEqual(['0', '50', '100', '150', '200', '250', '300', '350']);
  const inch = scaleMarks({ scale: 20, left: -1 }, 800, 25.4);
  expect(inch.map(({ label }) => label)).toEqual(['0.0', '0.2', '0.4', '0.6', '0.8', '1.0', '1.2', '1.4']);
  expect(inch[1]!.place).toBeCloseTo(5.08, 10);
});

test('a path begins and ends at the two stations', () => {
  const path = arcPath({ x1: 10, x2: 110, y1: 90, y2: 90, height: 40 });
  expect(path.startsWith('M10 90')).toBe(true);
  expect(path.endsWith('110 90')).toBe(true);
  expect(path).toContain(' 50 ');
});

describe('groups that float', () => {
  const tie = (from: string, to: string): StripTie => ({
    from: `station:${from}` as StationId,
    to: `station:${to}` as StationId,
    dimension: undefined,
    act: 'Add a dimension',
    sentence: `Add a dimension from ${from} to ${to}`,
  });
  const loose = (count: number): StripModel => {
    const names = Array.from({ length: count }, (_, i) => `s${i + 1}`);
    const stations = [station('foot', 0), ...names.map((name, i) => station(name, 0, i + 1))];
    return { ...model(stations, [], count + 1), ties: names.map((name) => tie('foot', name)) };
  };

  test('ties that lie over one another stand on levels of their own, and their words apart', () => {
    const three = loose(3);
    const { ties, tiesCrowded } = layStrip(three, fitLook(three, 650), 650, 300);
    const tops = ties.map(({ y1, y2, height }) => Math.min(y1, y2) - height);
    expect(tiesCrowded).toBe(false);
    expect(tops[0]! - tops[1]!).toBeGreaterThanOrEqual(16);
    expect(tops[1]! - tops[2]!).toBeGreaterThanOrEqual(16);
    expect(tops[2]).toBeGreaterThan(0);
    expect(ties.map(({ label }) => label)).toEqual([
      'Add a dimension',
      'Add a dimension from foot to s2',
      'Add a dimension from foot to s3',
    ]);
  });

  test('many ties in a low pane show their words one at a time', () => {
    const many = loose(20);
    const layout = layStrip(many, fitLook(many, 650), 650, 200);
    expect(layout.tiesCrowded).toBe(true);
    expect(new Set(layout.ties.map(({ height, y1, y2 }) => Math.min(y1, y2) - height)).size).toBe(20);
  });

  test('what says that they float stays on the sheet', () => {
    const three = loose(3);
    const sides = (wide: number) => layStrip(three, fitLook(three, wide), wide, 300).bases.map((base) => base.noteSide);
    expect(sides(650)).toEqual([undefined, 'right', 'right', 'left']);
    expect(sides(340)).toEqual([undefined, 'left', undefined, undefined]);
  });
});
