import { beforeAll, describe, expect, test } from 'vitest';
import { block, cylinder } from '../../../../tests/support/placed-bodies.ts';
import { regionArea, regionBox } from '../flat-region.ts';
import { STAY } from '../moves.ts';
import type { ExactShape, Vec3 } from '../placed.ts';
import { makeLeaf } from '../solid-leaf.ts';
import type { Kernel, KernelSolid } from './kernel.ts';
import { loadKernel } from './load-kernel.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

function take(shape: ExactShape): KernelSolid {
  const leaf = makeLeaf(kernel, shape, [STAY], 'fine');
  if (!leaf.ok) throw new Error(leaf.error);
  return leaf.value.solid;
}
const slab = () => take(block([0, 60], [0, 40], [0, 20]));

describe('cutting a solid up', () => {
  test('stretches by exact factors', () => {
    const before = kernel.live;
    const solid = slab();
    const larger = kernel.stretch(solid, [1.013, 1.02, 1]);
    expect(kernel.boxOf(larger).max).toEqual([60 * 1.013, 40 * 1.02, 20]);
    expect(kernel.volumeOf(larger)).toBeCloseTo(60 * 40 * 20 * 1.013 * 1.02, 6);
    kernel.release(larger);
    kernel.release(solid);
    expect(kernel.live).toBe(before);
  });

  test('keeps what lies between two planes, and gives nothing back where nothing is', () => {
    const solid = slab();
    const middle = kernel.between(solid, 'X', 10, 25)!;
    expect(kernel.boxOf(middle)).toEqual({ min: [10, 0, 0], max: [25, 40, 20] });
    expect(kernel.between(solid, 'Y', 50, 60)).toBeUndefined();
    kernel.release(middle);
    kernel.release(solid);
  });

  test('bends corners', () => {
    const solid = slab();
    const wedge = kernel.bend(solid, ([x, y, z]): Vec3 => [x, y, z * (1 - x / 120)])!;
    expect(kernel.volumeOf(wedge)).toBeCloseTo(60 * 40 * 15, 3);
    kernel.release(wedge);
    kernel.release(solid);
  });

  test('parts what does not hang together, hollows staying in theirs', () => {
    const box = slab();
    const hollow = take(block([10, 50], [10, 30], [5, 15]));
    const core = take(block([20, 40], [15, 25], [8, 12]));
    const aside = take(block([100, 110], [0, 10], [0, 10]));
    const shell = kernel.subtract(box, hollow)!;
    const all = kernel.unite([shell, core, aside])!;
    const pieces = kernel.piecesOf(all);
    const volumes = pieces.map((piece) => Math.round(kernel.volumeOf(piece))).sort((a, b) => a - b);
    expect(volumes).toEqual([20 * 10 * 4, 1000, 60 * 40 * 20 - 40 * 20 * 10]);
    for (const solid of [box, hollow, core, aside, shell, all, ...pieces]) kernel.release(solid);
  });

  test.each([
    ['X', [0, 40, 0, 20], 800],
    ['Y', [0, 20, 0, 60], 1200],
    ['Z', [0, 60, 0, 40], 2400],
  ] as const)('slices across %s unmirrored', (axis, [u0, u1, v0, v1], area) => {
    const solid = slab();
    const region = kernel.sliceOf(solid, axis, 10);
    expect(regionArea(region)).toBeCloseTo(area, 9);
    expect(regionBox(region)).toEqual({ min: [u0, v0], max: [u1, v1] });
    expect(regionArea(kernel.shadowOf(solid, axis))).toBeCloseTo(area, 9);
    kernel.release(solid);
  });

  test('an opening runs the other way, and grows the other way', () => {
    const solid = slab();
    const pin = take(cylinder('Z', [30, 20], [-1, 21], 10));
    const ring = kernel.subtract(solid, pin)!;
    const region = kernel.sliceOf(ring, 'Z', 10);
    expect(region).toHaveLength(2);
    expect(regionArea(region)).toBeCloseTo(2400 - Math.PI * 100, -0.5);
    const grown = kernel.grow(region, 1, 'sharp');
    expect(regionArea(grown)).toBeCloseTo(62 * 42 - Math.PI * 81, -0.5);
    expect(regionArea(kernel.grow(region, 11, 'round'))).toBeCloseTo(2400 + 200 * 11 + Math.PI * 121, -0.5);
    expect(regionArea(kernel.common(region, grown))).toBeCloseTo(regionArea(region), 6);
    expect(regionArea(kernel.without(region, grown))).toBeCloseTo(0, 6);
    for (const one of [solid, pin, ring]) kernel.release(one);
  });
});
