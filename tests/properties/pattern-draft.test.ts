import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import type { Axis } from '../../src/shared/build/station.ts';
import { withDraft } from '../../src/shared/pattern/draft.ts';
import type { PatternPiece } from '../../src/shared/pattern/pattern-piece.ts';
import { solidOfPieces } from '../../src/shared/pattern/solid-of-pieces.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { mirrorAbout, STAY, turnAbout } from '../../src/shared/solid/moves.ts';
import { block, cone, cylinder, type HandMade, placedBodies, tube } from '../support/placed-bodies.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const place = fc.integer({ min: -40, max: 40 });
const size = fc.integer({ min: 8, max: 60 });
const axis = fc.constantFrom<Axis>('X', 'Y', 'Z');
const shape = fc.oneof(
  fc
    .tuple(place, size, place, size, place, size)
    .map(([x, dx, y, dy, z, dz]) => block([x, x + dx], [y, y + dy], [z, z + dz])),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => cylinder(a, [u, v], [z, z + d], r / 2)),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => cone(a, [u, v], [z, z + d], [r, r / 2])),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => tube(a, [u, v], [z, z + d], r, r / 2)),
);
const moves = fc.oneof(
  fc.constant([STAY]),
  fc.tuple(axis, place).map(([a, at]) => [STAY, mirrorAbout(a, at)]),
  fc.tuple(axis, fc.constantFrom(90, 180, 37)).map(([a, turn]) => [STAY, turnAbout(a, 5, 7, turn)]),
);
const bodies: fc.Arbitrary<readonly HandMade[]> = fc.array(fc.record({ shape, moves, adds: fc.boolean() }), {
  minLength: 1,
  maxLength: 4,
});

const piecesOf = (list: readonly HandMade[]): readonly PatternPiece[] =>
  placedBodies(list).map((body) => ({
    key: body.record.id,
    name: body.record.id,
    body: body.record.id,
    is: 'body',
    adds: body.record.adds,
    cored: false,
    shape: body.shape!,
    moves: body.moves,
    taper: undefined,
  }));

test('draft is added metal: the drafted solid holds the one without, and within bounds', () => {
  fc.assert(
    fc.property(bodies, axis, place, fc.constantFrom(0.5, 2, 5), (list, draw, partingMm, deg) => {
      const pieces = piecesOf(list);
      const before = kernel.live;
      const slope = Math.tan((deg * Math.PI) / 180);
      const plain = solidOfPieces(kernel, pieces);
      if (!plain) return;
      const { pieces: drafted } = withDraft(pieces, { draw, partingMm, slope });
      const made = solidOfPieces(kernel, drafted)!;
      expect(made.refused).toEqual([]);
      const lost = kernel.subtract(plain.solid, made.solid);
      expect(lost ? kernel.volumeOf(lost) : 0).toBeLessThan(1e-6 * plain.volumeMm3 + 0.05);
      const high = ['X', 'Y', 'Z'].indexOf(draw);
      const reach = slope * (plain.max[high]! - plain.min[high]! + 200);
      for (const k of [0, 1, 2]) {
        const out = k === high ? 1e-6 : reach;
        // What takes away may have taken an end of what adds; it comes back by no more than draft.
        if (list.every(({ adds }) => adds)) {
          expect(made.min[k]!).toBeGreaterThan(plain.min[k]! - out - 1e-6);
          expect(made.max[k]!).toBeLessThan(plain.max[k]! + out + 1e-6);
        }
      }
      for (const solid of [plain.solid, made.solid, lost]) if (solid) kernel.release(solid);
      expect(kernel.live).toBe(before);
    }),
    { numRuns: 40 },
  );
}, 120_000);
