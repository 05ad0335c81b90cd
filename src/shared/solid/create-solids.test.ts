import { beforeAll, expect, test } from 'vitest';
import { block, cylinder, placedBodies, solidOf, THE_PART, tube } from '../../../tests/support/placed-bodies.ts';
import type { PartId } from '../base/ids.ts';
import { createSolids } from './create-solids.ts';
import type { Kernel } from './manifold/kernel.ts';
import { loadKernel } from './manifold/load-kernel.ts';
import { STAY, shiftAlong } from './moves.ts';
import type { PlacedBody } from './placed.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

test('bodies act in list order, and both states are told apart', () => {
  const { solid, solids } = solidOf(kernel, [
    { shape: block([0, 100], [0, 50], [0, 20]) },
    { shape: block([10, 20], [10, 20], [0, 20]), adds: false, finish: 'cored' },
    { shape: block([40, 60], [0, 50], [10, 20]), adds: false, finish: 'machined' },
    { shape: block([45, 55], [0, 50], [10, 15]) },
  ]);
  expect(solid?.finished.volumeMm3).toBeCloseTo(100_000 - 2000 - 10_000 + 2500, 6);
  expect(solid?.asCast.volumeMm3).toBeCloseTo(100_000 - 2000, 6);
  expect(solid?.finished.pieces).toBe(1);
  expect(solid?.finished.boxMax).toEqual([100, 50, 20]);
  const mesh = solids.meshOf(THE_PART, 'finished');
  expect(new Set(mesh?.bodyOf)).toEqual(new Set([0, 1, 2, 3]));
});

test('without machined bodies both states are one object', () => {
  const { solid } = solidOf(kernel, [{ shape: cylinder('X', [0, 0], [0, 10], 5) }]);
  expect(solid?.asCast).toBe(solid?.finished);
});

test('detached pieces are counted, hollows are not pieces', () => {
  const { solid } = solidOf(kernel, [
    { shape: block([0, 10], [0, 10], [0, 10]) },
    { shape: block([2, 8], [2, 8], [2, 8]), adds: false },
    { shape: block([20, 30], [0, 10], [0, 10]) },
  ]);
  expect(solid?.finished.pieces).toBe(2);
  expect(solid?.finished.volumeMm3).toBeCloseTo(2000 - 216, 9);
});

test.each([
  [
    'a boss wholly inside a block',
    [{ shape: block([0, 10], [0, 10], [0, 10]) }, { shape: block([2, 8], [2, 8], [2, 8]) }],
    [1],
  ],
  [
    'a boss inside a later block, flush',
    [{ shape: block([2, 8], [2, 8], [0, 8]) }, { shape: block([0, 10], [0, 10], [0, 10]) }],
    [0],
  ],
  [
    'a boss inside an earlier block, flush',
    [{ shape: block([0, 10], [0, 10], [0, 10]) }, { shape: block([2, 8], [2, 8], [0, 8]) }],
    [1],
  ],
  [
    'a hole beside the part',
    [{ shape: block([0, 10], [0, 10], [0, 10]) }, { shape: cylinder('Z', [30, 0], [0, 10], 2), adds: false }],
    [1],
  ],
  [
    'a hole within a later pocket',
    [
      { shape: block([0, 10], [0, 10], [0, 10]) },
      { shape: cylinder('Z', [5, 5], [0, 10], 2), adds: false },
      { shape: cylinder('Z', [5, 5], [-1, 11], 3), adds: false },
    ],
    [1],
  ],
  [
    'a cored hole that is bored out is of use: to the casting',
    [
      { shape: block([0, 10], [0, 10], [0, 10]) },
      { shape: cylinder('Z', [5, 5], [0, 10], 2), adds: false, finish: 'cored' as const },
      { shape: cylinder('Z', [5, 5], [-1, 11], 3), adds: false, finish: 'machined' as const },
    ],
    [],
  ],
  [
    'a plug that fills a hollow exactly',
    [
      { shape: block([0, 10], [0, 10], [0, 10]) },
      { shape: block([2, 8], [2, 8], [2, 8]), adds: false },
      { shape: block([2, 8], [2, 8], [2, 8]) },
    ],
    // The plug undoes the hollow, so the hollow is what does nothing.
    [1],
  ],
] as const)('idle: %s', (_, bodies, idle) => {
  expect(solidOf(kernel, bodies).solid?.idle).toEqual(idle.map((i) => `body:${i}`));
});

test('copies are one body: apart, touching, overlapping and mirrored', () => {
  const bar = block([0, 10], [0, 10], [0, 10]);
  const of = (mm: number) =>
    solidOf(kernel, [{ shape: bar, moves: [STAY, shiftAlong('X', mm), shiftAlong('X', 2 * mm)] }]).solid?.finished;
  expect(of(20)).toMatchObject({ pieces: 3 });
  expect(of(20)?.volumeMm3).toBeCloseTo(3000, 9);
  expect(of(10)).toMatchObject({ pieces: 1 });
  expect(of(10)?.volumeMm3).toBeCloseTo(3000, 9);
  expect(of(5)?.volumeMm3).toBeCloseTo(2000, 9);
});

test('computes only what changed, says whether anything did, and gives all memory back', () => {
  const before = kernel.live;
  const [a, b] = ['part:a', 'part:b'] as unknown as [PartId, PartId];
  const bodies = new Map<PartId, readonly PlacedBody[]>([
    [a, placedBodies([{ shape: tube('X', [0, 0], [0, 10], 20, 10) }])],
    [b, placedBodies([{ shape: undefined }])],
  ]);
  let parts = [a, b];
  const solids = createSolids({ parts: () => parts, bodiesOf: (part) => bodies.get(part) ?? [] }, () => kernel);
  expect(solids.pending()).toEqual([a]);
  expect(solids.solidOf(a)).toBeUndefined();
  expect(solids.compute(a)).toBe(true);
  expect(solids.compute(a)).toBe(false);
  expect(solids.pending()).toEqual([]);
  const first = solids.solidOf(a);
  // A new list of bodies with the same shapes changes nothing that is shown.
  bodies.set(
    a,
    bodies.get(a)!.map((body) => ({ ...body })),
  );
  expect(solids.pending()).toEqual([a]);
  expect(solids.compute(a)).toBe(false);
  expect(solids.solidOf(a)).toBe(first);
  bodies.set(a, placedBodies([{ shape: tube('X', [0, 0], [0, 11], 20, 10) }]));
  expect(solids.solidOf(a)).toBeUndefined();
  expect(solids.compute(a)).toBe(true);
  expect(solids.solidOf(a)?.finished.volumeMm3).toBeCloseTo(11 * 300 * Math.PI, 4);
  parts = [b];
  expect(solids.pending()).toEqual([]);
  expect(kernel.live).toBe(before);
});

test('a body that the kernel does not take is named, the others stand', () => {
  const open = {
    is: 'mesh' as const,
    vertices: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
    triangles: Uint32Array.of(0, 1, 2),
  };
  const { solids, solid } = solidOf(kernel, [{ shape: block([0, 1], [0, 1], [0, 1]) }, { shape: open }]);
  expect(solid?.finished.volumeMm3).toBeCloseTo(1, 9);
  expect(solids.refusedOf(THE_PART)).toEqual([{ body: 'body:1', why: 'not closed' }]);
});

test('without a kernel nothing is computed and nothing is pending', () => {
  const bodies = placedBodies([{ shape: block([0, 1], [0, 1], [0, 1]) }]);
  const solids = createSolids({ parts: () => [THE_PART], bodiesOf: () => bodies }, () => undefined);
  expect(solids.pending()).toEqual([]);
  expect(solids.compute(THE_PART)).toBe(false);
  expect(solids.bodiesOf(THE_PART)).toBe(bodies);
});

test('trees of many parts do not pile up, and a dropped one comes back for its mesh', () => {
  const before = kernel.live;
  const parts = Array.from({ length: 40 }, (_, i) => `part:${i}` as PartId);
  const bodies = new Map(parts.map((part, i) => [part, placedBodies([{ shape: block([0, i + 1], [0, 1], [0, 1]) }])]));
  const solids = createSolids({ parts: () => parts, bodiesOf: (part) => bodies.get(part)! }, () => kernel);
  for (const part of solids.pending()) solids.compute(part);
  expect(kernel.live - before).toBe(24);
  expect(solids.solidOf(parts[0]!)?.finished.volumeMm3).toBeCloseTo(1, 9);
  expect(solids.meshOf(parts[0]!, 'as cast')?.triangles.length).toBe(36);
  solids.drop();
  expect(kernel.live).toBe(before);
  expect(solids.solidOf(parts[0]!)?.finished.volumeMm3).toBeCloseTo(1, 9);
});
