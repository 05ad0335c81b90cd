import { expect, test } from 'vitest';
import { block, solidOf } from '../../../tests/support/placed-bodies.ts';
import { loadKernel } from './manifold/load-kernel.ts';
import { mirrorAbout, STAY } from './moves.ts';
import { meshesOf, onGrid } from './solid-leaf.ts';

const kernel = await loadKernel();

/** A face at `at`, and the same by a mirror about `about` of one at the place that the drawing works out for it. */
const pairs = [0.1, 0.3, 1.1, 7.7, 12.35, 33.3].flatMap((at) =>
  [0.7, 10.1, 25.3, 101.9].map((about) => ({ at, about, other: about + (about - at) })),
);

test('mirrored places that should be one are one', () => {
  const rough = pairs.filter(({ at, about, other }) => 2 * about - other !== at);
  // The grid has something to do.
  expect(rough.length).toBeGreaterThan(0);
  for (const { at, about, other } of pairs) {
    const { meshes } = meshesOf(block([other, other + 5], [0, 8], [0, 8]), [mirrorAbout('X', about)], 'fine');
    const end = Math.max(...[...meshes[0]!.vertices].filter((_, i) => i % 3 === 0));
    expect(end).toBe(onGrid(at));
    expect(Math.abs(end - at)).toBeLessThan(1e-9);
  }
});

test.each([false, true])('no crack is left between them, nor a wall found at it, turned round: %s', (isTurned) => {
  for (const { at, about, other } of pairs.filter((pair) => pair.at < pair.about)) {
    const copies = { shape: block([other, other + 9], [0, 20], [0, 20]), moves: [STAY, mirrorAbout('X', about)] };
    const beside = { shape: block([at, at + 0.25 * Math.abs(other - at)], [0, 20], [0, 20]) };
    const { solid } = solidOf(kernel, isTurned ? [beside, copies] : [copies, beside]);
    expect(solid!.faces.walls.filter(({ thicknessMm }) => thicknessMm === 0)).toEqual([]);
    // The mirrored copy and what stands beside it hang together; the other copy is across the mirror.
    expect(solid!.finished.pieces).toBe(2);
  }
});
