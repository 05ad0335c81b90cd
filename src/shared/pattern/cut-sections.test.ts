import { beforeAll, describe, expect, test } from 'vitest';
import { block, cone, cylinder, type HandMade, placedBodies, prism } from '../../../tests/support/placed-bodies.ts';
import { allOf } from '../base/pieces.ts';
import type { Axis } from '../build/station.ts';
import { regionArea, regionBox } from '../solid/flat-region.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { chooseCuts } from './choose-cuts.ts';
import { cuttingSections, type Section, stepsOf } from './cut-sections.ts';
import { glueJoints, glueOrder } from './joints.ts';
import type { PatternPiece } from './pattern-piece.ts';
import { solidOfPieces } from './solid-of-pieces.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const piecesOf = (bodies: readonly HandMade[]): readonly PatternPiece[] =>
  placedBodies(bodies).map(({ record, shape, moves }) => ({
    key: record.id,
    name: record.id,
    body: record.id,
    is: 'body',
    adds: record.adds,
    cored: false,
    shape: shape!,
    moves,
    taper: undefined,
  }));

interface Cut {
  readonly sections: readonly Section[];
  readonly glueMm3: number;
  readonly volumeMm3: number;
  readonly joints: ReturnType<typeof glueJoints>;
  readonly order: ReturnType<typeof glueOrder>;
}

function cut(bodies: readonly HandMade[], axis: Axis, { boards = [50], glueMm = 0, kerfMm = 1 } = {}): Cut {
  const before = kernel.live;
  const { solid, min, max } = solidOfPieces(kernel, piecesOf(bodies))!;
  const k = ['X', 'Y', 'Z'].indexOf(axis);
  const layers = chooseCuts({
    low: min[k]!,
    high: max[k]!,
    steps: stepsOf(kernel, solid, axis),
    thicknesses: boards,
    glueMm,
    leastMm: 5,
  });
  const { sections, glueMm3 } = allOf(cuttingSections(kernel, solid, axis, layers, kerfMm));
  const volumeMm3 = kernel.volumeOf(solid);
  const joints = glueJoints(kernel, sections);
  kernel.release(solid);
  expect(kernel.live).toBe(before);
  return { sections, glueMm3, volumeMm3, joints, order: glueOrder(sections, joints) };
}
const sum = (sections: readonly Section[]) => sections.reduce((total, { volumeMm3 }) => total + volumeMm3, 0);

/** A foot of 100 × 60 × 15, a bored stem of ⌀40 on it, up to 80. */
const stand: readonly HandMade[] = [
  { shape: block([0, 100], [0, 60], [0, 15]) },
  { shape: cylinder('Z', [50, 30], [15, 80], 20) },
  { shape: cylinder('Z', [50, 30], [0, 80], 8), adds: false },
];

describe('a foot with a bored stem, cut along Z', () => {
  test('is cut at its step and by the board', () => {
    const { sections, volumeMm3 } = cut(stand, 'Z');
    expect(sections.map(({ name, low, high, cut: how, openings }) => [name, low, high, how, openings])).toEqual([
      ['1', 0, 15, 'straight', 1],
      ['2', 15, 65, 'straight', 1],
      ['3', 65, 80, 'straight', 1],
    ]);
    expect(sum(sections)).toBeCloseTo(volumeMm3, 3);
    // True-size templates: the foot with its bore.
    expect(regionArea(sections[0]!.lower)).toBeCloseTo(6000 - Math.PI * 64, -0.5);
    expect(regionBox(sections[1]!.outline)!.max[0]).toBeCloseTo(70, 6);
    // All round, and the bore.
    expect(sections[0]!.cutMm).toBeCloseTo(320 + Math.PI * 16, 0);
  });

  test('the wire runs half a kerf outside the outline, and within the opening', () => {
    const [foot] = cut(stand, 'Z', { kerfMm: 2 }).sections;
    expect(regionBox(foot!.wire.lower)).toEqual({ min: [-1, -1], max: [101, 61] });
    expect(regionArea(foot!.wire.lower)).toBeCloseTo(102 * 62 - Math.PI * 49, -0.5);
    expect(foot!.wire.upper).toBe(foot!.wire.lower);
  });

  test('glue joints take their part, and no more', () => {
    const { sections, glueMm3, volumeMm3 } = cut(stand, 'Z', { glueMm: 0.4 });
    expect(sections).toHaveLength(3);
    expect(glueMm3).toBeGreaterThan(0);
    expect(sum(sections) + glueMm3).toBeCloseTo(volumeMm3, 2);
  });

  test('neighbours carry the same two marks, and are glued from the foot up', () => {
    const { joints, order } = cut(stand, 'Z');
    expect(joints.map(({ under, over, marks }) => [under, over, marks.length])).toEqual([
      ['1', '2', 2],
      ['2', '3', 2],
    ]);
    expect(joints[1]!.marks).toEqual(joints[0]!.marks);
    for (const [x, y] of joints[0]!.marks) {
      const r = Math.hypot(x - 50, y - 30);
      expect(r).toBeGreaterThan(8 + 2.9);
      expect(r).toBeLessThan(20 - 2.9);
    }
    expect(order).toEqual({
      first: '1',
      steps: [
        { add: '2', to: ['1'], fromBelow: false },
        { add: '3', to: ['2'], fromBelow: false },
      ],
      loose: [],
    });
  });

  test('cut along Y, the lying stem is carved out of its shadow', () => {
    const { sections, volumeMm3 } = cut(stand, 'Y');
    expect(sum(sections)).toBeCloseTo(volumeMm3, 2);
    const carved = sections.filter((section) => section.cut === 'carved');
    expect(carved.length).toBeGreaterThan(0);
    for (const { wireMm3, volumeMm3: own } of carved) expect(wireMm3).toBeGreaterThan(own);
  });
});

test('legs that stand apart are pieces of their own, glued to what lies over them', () => {
  const { sections, joints, order } = cut(
    [
      { shape: block([0, 100], [0, 60], [40, 60]) },
      { shape: block([0, 20], [0, 60], [0, 40]) },
      { shape: block([80, 100], [0, 60], [0, 40]) },
    ],
    'Z',
  );
  expect(sections.map(({ name }) => name)).toEqual(['1A', '1B', '2']);
  expect(joints).toHaveLength(2);
  expect(order.steps).toEqual([
    { add: '2', to: ['1A'], fromBelow: false },
    { add: '1B', to: ['2'], fromBelow: true },
  ]);
});

test('a tapered block is cut along two templates, and holds what a straight wire leaves', () => {
  const taper = prism(
    'Y',
    [0, 80],
    [
      { u: 0, v: 0, bulge: 0 },
      { u: 100, v: 0, bulge: 0 },
      { u: 80, v: 40, bulge: 0 },
      { u: 20, v: 40, bulge: 0 },
    ],
  );
  const [section] = cut([{ shape: taper }], 'Z').sections;
  expect(section).toMatchObject({ cut: 'ruled', openings: 0 });
  expect(section!.wireMm3).toBeCloseTo(80 * 80 * 40, -1);
  expect(section!.volumeMm3).toBeCloseTo(80 * 80 * 40, 3);
  expect(regionBox(section!.lower)!.max[0]).toBeCloseTo(100, 2);
  expect(regionBox(section!.upper)!.max[0]).toBeCloseTo(80, 2);
  expect(section!.wire.upper).not.toBe(section!.wire.lower);
});

test('a cone likewise, its volume that of the formula but for its facets', () => {
  const [section] = cut([{ shape: cone('X', [0, 0], [0, 40], [30, 18]) }], 'X').sections;
  expect(section!.cut).toBe('ruled');
  expect(section!.wireMm3 / ((Math.PI * 40 * (900 + 540 + 324)) / 3)).toBeCloseTo(1, 2);
});

test('a dome is carved', () => {
  const [section] = cut(
    [{ shape: cylinder('X', [0, 0], [0, 60], 20) }, { shape: block([-1, 61], [-30, 30], [-30, 0]), adds: false }],
    'Z',
  ).sections;
  expect(section!.cut).toBe('carved');
  expect(section!.wireMm3).toBeCloseTo(60 * 40 * 20, -2);
});
