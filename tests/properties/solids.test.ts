import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { createSolids } from '../../src/shared/solid/create-solids.ts';
import type { Kernel, KernelSolid } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { meshOfShape } from '../../src/shared/solid/mesh/mesh-of-shape.ts';
import { compose, mirrorAbout, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import type { Move, PlacedBody } from '../../src/shared/solid/placed.ts';
import { block, cone, cylinder, type HandMade, placedBodies, solidOf, THE_PART } from '../support/placed-bodies.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const place = fc.integer({ min: -30, max: 30 });
const size = fc.integer({ min: 1, max: 30 });
const axis = fc.constantFrom('X' as const, 'Y' as const, 'Z' as const);
const shape = fc.oneof(
  fc
    .tuple(place, size, place, size, place, size)
    .map(([x, dx, y, dy, z, dz]) => block([x, x + dx], [y, y + dy], [z, z + dz])),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => cylinder(a, [u, v], [z, z + d], r)),
  fc
    .tuple(axis, place, place, place, size, size, fc.integer({ min: 0, max: 20 }))
    .map(([a, u, v, z, d, r, s]) => cone(a, [u, v], [z, z + d], [r, s])),
);
const body: fc.Arbitrary<HandMade> = fc.record({
  shape,
  adds: fc.boolean(),
  finish: fc.constantFrom('as cast' as const, 'cored' as const, 'machined' as const),
});
const bodies = fc.array(body, { minLength: 1, maxLength: 9 });

/** One body after another, as the list says: the slow way. */
function plainVolume(list: readonly HandMade[]): number {
  let solid: KernelSolid | undefined;
  const replace = (next: KernelSolid | undefined) => {
    if (solid) kernel.release(solid);
    solid = next;
  };
  for (const { shape, adds = true } of list) {
    const taken = kernel.take(meshOfShape(shape!).mesh);
    if (!taken.ok) throw new Error(taken.error);
    const one = taken.value.solid;
    if (adds) replace(kernel.unite(solid ? [solid, one] : [one]));
    else if (solid) replace(kernel.subtract(solid, one));
    kernel.release(one);
  }
  const volume = solid ? kernel.volumeOf(solid) : 0;
  replace(undefined);
  return volume;
}

/** Volume of the flat-faceted solid that the kernel holds: of the shown mesh, summed plainly. */
function shownVolume(list: readonly HandMade[]): number {
  const { solids } = solidOf(kernel, list);
  const mesh = solids.meshOf(THE_PART, 'finished');
  solids.drop();
  if (!mesh) return 0;
  let six = 0;
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const i = 3 * mesh.triangles[t + k]!;
      return [mesh.vertices[i]!, mesh.vertices[i + 1]!, mesh.vertices[i + 2]!] as const;
    }) as [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

describe('solids of random bodies', () => {
  test('the tree makes what one body after another makes', () => {
    fc.assert(
      fc.property(bodies, (list) => {
        const plain = plainVolume(list);
        expect(Math.abs(shownVolume(list) - plain)).toBeLessThan(1e-5 * Math.max(plain, 100));
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });

  test('after any edits the figures are those of a fresh computation, and no memory is lost', () => {
    fc.assert(
      fc.property(bodies, fc.array(fc.tuple(fc.nat(), body, fc.boolean()), { maxLength: 5 }), (start, edits) => {
        const before = kernel.live;
        let list: readonly PlacedBody[] = placedBodies(start);
        const source = { parts: () => [THE_PART], bodiesOf: () => list };
        const solids = createSolids(source, () => kernel);
        solids.compute(THE_PART);
        for (const [at, changed, isMore] of edits) {
          const index = at % list.length;
          const [made] = placedBodies([changed]);
          const one = { ...made!, record: { ...made!.record, id: list[index]!.record.id } };
          list = isMore
            ? [...list, { ...one, record: { ...one.record, id: `body:more${list.length}` as typeof one.record.id } }]
            : list.map((body, i) => (i === index ? one : body));
          solids.compute(THE_PART);
          const fresh = createSolids(source, () => kernel);
          fresh.compute(THE_PART);
          expect(solids.solidOf(THE_PART)).toEqual(fresh.solidOf(THE_PART));
          fresh.drop();
        }
        solids.drop();
        expect(kernel.live).toBe(before);
      }),
      { numRuns: 25, seed: 20261125 },
    );
  });

  test('a part that is moved, turned or mirrored weighs the same, and its centre goes along', () => {
    const moves: readonly Move[] = [
      shiftAlong('Y', 123.4),
      turnAbout('X', 3, 4, 37),
      compose(mirrorAbout('Z', 5), turnAbout('Z', 0, 0, 211)),
    ];
    fc.assert(
      fc.property(bodies, fc.constantFrom(...moves), (list, move) => {
        const here = solidOf(kernel, list).solid?.finished;
        const there = solidOf(
          kernel,
          list.map((one) => ({ ...one, moves: [move] })),
        ).solid?.finished;
        // Dust of rounding may be all that is left of a part, or may be gone.
        if ((here?.volumeMm3 ?? 0) < 1 || !here || !there) return;
        expect(there.volumeMm3 / here.volumeMm3).toBeCloseTo(1, 6);
        const [x, y, z] = here.centre;
        for (const row of [0, 1, 2] as const) {
          const to = move[4 * row]! * x + move[4 * row + 1]! * y + move[4 * row + 2]! * z + move[4 * row + 3]!;
          expect(Math.abs(there.centre[row] - to)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });
});
