import { describe, expect, test } from 'vitest';
import { placeSketch, recordsOfBodies } from '../../../tests/support/place-sketch.ts';
import { type BodySketch, everyShape, sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import type { Repeat, Shape } from '../build/body.ts';
import { apply, type BuildDiff } from '../build/diff.ts';
import { buildOf, recordOf } from '../build/look-up.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import { createDrawing } from '../drawing/create-drawing.ts';
import { createPlacing } from './place-bodies.ts';
import { shapeProblemCodes } from './placed.ts';

const part = 'part:b' as PartId;

test('every shape is placed, with all its copies', () => {
  const build = buildOf(everyShape());
  const placed = createPlacing().placeBodies(part, recordsOfBodies(build, part), createDrawing(build));
  expect(placed.map(({ problem }) => problem)).toEqual(placed.map(() => undefined));
  expect(placed.map(({ moves }) => moves.length)).toEqual([1, 1, 1, 1, 1, 1, 12, 1, 1, 1, 1, 1]);
  expect(placed.map(({ shape }) => shape?.is)).toEqual([
    'extrusion',
    'turned',
    'turned',
    'turned',
    'extrusion',
    'turned',
    'turned',
    'extrusion',
    'extrusion',
    'extrusion',
    'extrusion',
    'mesh',
  ]);
  expect(placed[6]!.dimensions).toContain('dimension:b-count-3');
  expect(placed[6]!.stations).toContain('station:b-Z5');
});

test('outlines run counter-clockwise from low to high, however the places lie', () => {
  const s = sketchBodies();
  const point = (u: number, v: number): [StationId, StationId] => [s.at('X', u), s.at('Z', v)];
  s.body({
    type: 'prism',
    axis: 'Y',
    ends: [s.at('Y', 9), s.at('Y', -2)],
    corners: [{ at: point(0, 0) }, { at: point(0, 10) }, { at: point(20, 0), radius: s.size('radius', 2) }],
  });
  const [placed] = placeSketch(s);
  expect(placed!.shape).toMatchObject({ is: 'extrusion', axis: 'Y', a0: -2, a1: 9 });
  const outline = placed!.shape?.is === 'extrusion' ? placed!.shape.outline : [];
  expect(outline).toHaveLength(4);
  const bulge = outline.find((corner) => corner.bulge !== 0)!.bulge;
  // The corner turns by 180° less its angle of atan(10 / 20).
  expect(bulge).toBeCloseTo(Math.tan((Math.PI - Math.atan(0.5)) / 4), 12);
});

type Draw = (s: BodySketch, point: (u: number, v: number) => [StationId, StationId]) => Shape;

const plate =
  (change: (s: BodySketch) => object): Draw =>
  (s, p) =>
    ({
      type: 'hole',
      axis: 'Z',
      from: s.at('Z', 20),
      to: s.at('Z', 0),
      centre: p(0, 0),
      diameter: s.size('diameter', 8),
      ...change(s),
    }) as Shape;

const turning =
  (...points: readonly (readonly [a: number, d?: number])[]): Draw =>
  (s, p) => ({
    type: 'revolved',
    axis: 'Z',
    centre: p(0, 0),
    outline: points.map(([a, d]) =>
      d === undefined ? { at: s.at('Z', a) } : { at: s.at('Z', a), diameter: s.size('diameter', d) },
    ),
  });

const polygon =
  (...corners: readonly (readonly [u: number, v: number, r?: number])[]): Draw =>
  (s, p) => ({
    type: 'prism',
    axis: 'Z',
    ends: [s.at('Z', 0), s.at('Z', 5)],
    corners: corners.map(([u, v, r]) =>
      r === undefined ? { at: p(u, v) } : { at: p(u, v), radius: s.size('radius', r) },
    ),
  });

const cylinder =
  (change: (s: BodySketch) => object): Draw =>
  (s, p) =>
    ({
      type: 'cylinder',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 5)],
      centre: p(0, 0),
      diameter: s.size('diameter', 8),
      ...change(s),
    }) as Shape;

const wrong: readonly (readonly [name: string, draw: Draw, why: string, at: readonly string[]])[] = [
  ['ends that coincide', cylinder((s) => ({ ends: [s.at('Z', 5), s.at('Z', 5)] })), 'no-size', ['Z5']],
  ['a diameter of nothing', cylinder((s) => ({ diameter: s.size('diameter', 0) })), 'no-size', ['diameter-0']],
  ['a diameter below nothing', cylinder((s) => ({ diameter: s.size('diameter', -3) })), 'no-size', ['diameter--3']],
  [
    'a bore as wide as its tube',
    cylinder((s) => ({ bore: s.size('radius', 4) })),
    'bore-not-smaller',
    ['radius-4', 'diameter-8'],
  ],
  [
    'a thread of no known pitch',
    plate((s) => ({ diameter: s.size('thread', '7 mm + 0.3 mm') })),
    'thread-without-pitch',
    ['thread-7_mm___0.3_mm'],
  ],
  [
    'a counterbore narrower than its hole',
    plate((s) => ({ counterbore: { diameter: s.size('diameter', 8), depth: s.size('length', 3) } })),
    'counterbore-not-wider',
    ['diameter-8'],
  ],
  [
    'a counterbore through',
    plate((s) => ({ counterbore: { diameter: s.size('diameter', 12), depth: s.size('length', 20) } })),
    'counterbore-too-deep',
    ['length-20', 'Z0'],
  ],
  [
    'a countersink narrower than its hole',
    plate((s) => ({ countersink: { diameter: s.size('diameter', 7), angle: s.size('angle', 90) } })),
    'countersink-not-wider',
    ['diameter-7', 'diameter-8'],
  ],
  [
    'a countersink deeper than its hole',
    plate((s) => ({ countersink: { diameter: s.size('diameter', 60), angle: s.size('angle', 90) } })),
    'countersink-too-deep',
    ['diameter-60', 'angle-90', 'Z0'],
  ],
  [
    'a flat countersink',
    plate((s) => ({ countersink: { diameter: s.size('diameter', 12), angle: s.size('angle', 180) } })),
    'angle-out-of-range',
    ['angle-180'],
  ],
  ['a point of no angle', plate((s) => ({ point: s.size('angle', 0) })), 'angle-out-of-range', ['angle-0']],
  ['a bow-tie', polygon([0, 0], [10, 10], [10, 0], [0, 10]), 'outline-crosses', ['X0', 'Y0', 'X10', 'Y10']],
  [
    'a corner that touches a side',
    polygon([0, 0], [20, 0], [20, 10], [10, 0], [0, 10]),
    'outline-crosses',
    ['X0', 'Y0', 'X20', 'Y10', 'X10'],
  ],
  ['a spike', polygon([0, 0], [20, 0], [30, 0], [20, 0], [20, 10]), 'outline-crosses', ['X0', 'Y0', 'X20', 'X30']],
  ['corners on one line', polygon([0, 0], [5, 5], [10, 10]), 'no-size', ['X0', 'Y0', 'X5', 'Y5', 'X10', 'Y10']],
  ['two corners in one place', polygon([0, 0], [10, 0], [10, 0], [0, 10]), 'no-size', ['X10', 'Y0']],
  [
    'roundings that do not fit on their side',
    polygon([0, 0, 6], [10, 0, 6], [10, 40], [0, 40]),
    'radius-too-large',
    ['radius-6', 'X0', 'Y0', 'X10'],
  ],
  [
    'a rounding that runs into a notch',
    polygon([0, 0, 15], [40, 0], [40, 40], [0, 40], [0, 30], [4, 4.2], [-0.5, 20]),
    'outline-crosses',
    [],
  ],
  [
    'a turned outline that crosses itself',
    turning([0, 10], [10, 30], [10, 10], [0, 30]),
    'outline-crosses',
    ['Z0', 'diameter-10', 'Z10', 'diameter-30'],
  ],
  ['a turned outline on the axis', turning([0], [5], [10]), 'no-size', ['Z0', 'Z5', 'Z10']],
  [
    'a turned outline across the axis alone',
    turning([5, 10], [5, 20], [5, 30]),
    'no-size',
    ['Z5', 'diameter-10', 'diameter-20', 'diameter-30'],
  ],
  ['a turned outline with a diameter below nothing', turning([0, -1], [5, 10], [0, 10]), 'no-size', ['diameter--1']],
  [
    'a slot without length',
    (s, p) => ({
      type: 'slot',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 5)],
      centres: [p(3, 4), p(3, 4)],
      width: s.size('length', 2),
    }),
    'no-size',
    ['X3', 'Y4'],
  ],
  [
    'a pocket too narrow for its radius',
    (s, p) => ({
      type: 'pocket',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 5)],
      from: p(0, 0),
      to: p(10, 30),
      radius: s.size('radius', 5.1),
    }),
    'radius-too-large',
    ['radius-5.1'],
  ],
];

const short = (id: string): string => id.replace(/^\w+:b-/, '');

describe('what is wrong with a body is named', () => {
  test.each(wrong.map(([name, draw, why, at]) => ({ name, draw, why, at })))('$name', ({ draw, why, at }) => {
    const s = sketchBodies();
    s.body(draw(s, (u, v) => [s.at('X', u), s.at('Y', v)]));
    const [placed] = placeSketch(s);
    const problem = placed!.problem!;
    expect(placed).toMatchObject({ shape: undefined, moves: [] });
    expect(problem.why === 'shape' ? problem.code : problem.why).toBe(why);
    if (at.length > 0) expect(problem.why !== 'not-placed' && problem.at.map(short)).toEqual(at);
  });

  const repeated: readonly (readonly [string, (s: BodySketch) => readonly Repeat[], string, readonly string[]])[] = [
    [
      'half a copy',
      (s) => [{ type: 'row', axis: 'X', count: s.size('count', 0), pitch: s.size('length', 5) }],
      'count-not-whole',
      ['count-0'],
    ],
    [
      'copies on one another',
      (s) => [{ type: 'row', axis: 'X', count: s.size('count', 3), pitch: s.size('length', 0) }],
      'no-size',
      ['length-0'],
    ],
    [
      'a bolt circle of nothing',
      (s) => [
        {
          type: 'circle',
          axis: 'Z',
          centre: [s.at('X', 0), s.at('Y', 0)],
          count: s.size('count', 3),
          circle: s.size('diameter', 0),
        },
      ],
      'no-size',
      ['diameter-0'],
    ],
    [
      'too many copies, all told',
      (s) => [
        { type: 'row', axis: 'X', count: s.size('count', 50), pitch: s.size('length', 5) },
        { type: 'row', axis: 'Y', count: s.size('count', 41), pitch: s.size('length', 5) },
      ],
      'too-many-copies',
      ['count-41'],
    ],
  ];
  test.each(repeated.map(([name, repeats, why, at]) => ({ name, repeats, why, at })))(
    '$name',
    ({ repeats, why, at }) => {
      const s = sketchBodies();
      s.body(
        cylinder(() => ({}))(s, (u, v) => [s.at('X', u), s.at('Y', v)]),
        { repeats: [...repeats(s)] },
      );
      const problem = placeSketch(s)[0]!.problem!;
      expect(problem.why === 'shape' ? problem.code : problem.why).toBe(why);
      expect(problem.why !== 'not-placed' && problem.at.map(short)).toEqual(at);
    },
  );

  test('an imported solid whose faces look inwards; a size that measures something else', () => {
    const records = everyShape().map((record): BuildRecord => {
      if (record.kind === 'solid') return { ...record, triangles: inwards() };
      return (record.id as string) === 'dimension:b-count-3'
        ? ({ ...record, measure: { type: 'size', form: 'mass' } } as BuildRecord)
        : record;
    });
    const build = buildOf(records);
    const placed = createPlacing().placeBodies(part, recordsOfBodies(build, part), createDrawing(build));
    expect(placed.at(-1)!.problem).toMatchObject({ code: 'mesh-inside-out' });
    expect(placed[6]!.problem).toMatchObject({ code: 'size-does-not-fit', at: ['dimension:b-count-3'] });
  });

  test('every code has a case', () => {
    const seen = new Set([...wrong.map(([, , why]) => why), ...repeated.map(([, , why]) => why)]);
    for (const code of ['mesh-inside-out', 'size-does-not-fit']) seen.add(code);
    seen.delete('no-size');
    expect([...seen].sort()).toEqual([...shapeProblemCodes].sort());
  });
});

/** The tetrahedron's triangles (0 2 1, 0 1 3, 1 2 3, 2 0 3), each the other way round. */
const inwards = (): string => Buffer.from(Uint32Array.of(0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0).buffer).toString('base64');

describe('as the drawing changes', () => {
  const start = buildOf(everyShape());
  const open = () => {
    let build: Build = start;
    const drawing = createDrawing(build);
    const placing = createPlacing();
    return {
      place: () => placing.placeBodies(part, recordsOfBodies(build, part), drawing),
      edit(id: string, change: object) {
        const from = build.get(id as BuildRecord['id'])!;
        const diff: BuildDiff = { added: [], removed: [], updated: [[from, { ...from, ...change } as BuildRecord]] };
        build = apply(build, diff);
        drawing.update(diff);
      },
    };
  };

  test('what stands as it stood keeps its identity, the list too', () => {
    const { place, edit } = open();
    const before = place();
    expect(place()).toBe(before);
    edit('dimension:b-diameter-25', { note: 'checked', limits: '±0.1', name: 'outer diameter' });
    edit('station:b-X30', { name: 'centre', form: 'centreline' });
    expect(place()).toBe(before);
    edit('dimension:b-diameter-25', { value: '25.0' });
    expect(place()).toBe(before);
    edit('dimension:b-length-8', { value: '9' });
    const after = place();
    expect(after.map((body, i) => body === before[i])).toEqual(before.map((_, i) => i !== 7));
  });

  test('a dimension that goes empty is named with the stations that it leaves unplaced', () => {
    const { place, edit } = open();
    const before = place();
    edit('dimension:b-X30', { value: '' });
    edit('dimension:b-diameter-10', { value: 'nothing of this name' });
    const unplaced = (stations: readonly string[], dimensions: readonly string[]) => ({
      why: 'not-placed',
      stations: stations.map((name) => `station:b-${name}`),
      dimensions: dimensions.map((name) => `dimension:b-${name}`),
    });
    const after = place();
    expect(after[0]).toBe(before[0]);
    expect(after[1]!.problem).toEqual(unplaced(['X30'], []));
    expect(after[2]!.problem).toEqual(unplaced(['X30'], ['diameter-10']));
    edit('dimension:b-X30', { value: '30' });
    edit('dimension:b-diameter-10', { value: '10' });
    expect(place()).toEqual(before);
  });

  test('without a datum nothing on an axis stands anywhere', () => {
    const { place, edit } = open();
    edit('station:b-Y0', { datum: false });
    const placed = place();
    expect(placed[0]!.problem).toEqual({
      why: 'not-placed',
      stations: ['station:b-Y0', 'station:b-Y40'],
      dimensions: [],
    });
  });

  test('the pitch counts although the major diameter stays', () => {
    const { place, edit } = open();
    const [, , , , , , before] = place();
    edit('dimension:b-thread-M8', { value: 'M8x1' });
    const after = place()[6]!;
    expect(after).not.toBe(before);
    edit('dimension:b-thread-M8', { value: 'M8 - 6H' });
    expect(place()[6]!.shape).toEqual(before!.shape);
    expect(recordOf(start, 'dimension', 'dimension:b-thread-M8' as DimensionId)?.value).toBe('M8');
  });
});
