import type { BodyId, PartId } from '../../src/shared/base/ids.ts';
import type { Axis } from '../../src/shared/build/station.ts';
import { createSolids } from '../../src/shared/solid/create-solids.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { STAY } from '../../src/shared/solid/moves.ts';
import type { ExactShape, Extrusion, Move, OutlineCorner, PlacedBody, Turned } from '../../src/shared/solid/placed.ts';

/** Bodies given by their exact shapes alone, for tests that are about solids and not about placing. */
export interface HandMade {
  readonly shape: ExactShape | undefined;
  readonly adds?: boolean;
  readonly finish?: PlacedBody['record']['finish'];
  readonly moves?: readonly Move[];
}

export const THE_PART = 'part:0000000000' as PartId;

export const placedBodies = (bodies: readonly HandMade[]): readonly PlacedBody[] =>
  bodies.map(({ shape, adds = true, finish = 'as cast', moves = [STAY] }, i) => ({
    // The kernel reads id, `adds` and `finish` of a record, and nothing of its own shape.
    record: { id: `body:${i}` as BodyId, adds, finish } as PlacedBody['record'],
    shape,
    moves,
    problem: undefined,
    stations: [],
    dimensions: [],
  }));

export const corner = (u: number, v: number, bulge = 0): OutlineCorner => ({ u, v, bulge });

type Pair = readonly [number, number];

export const block = ([x0, x1]: Pair, [y0, y1]: Pair, [a0, a1]: Pair): Extrusion => ({
  is: 'extrusion',
  axis: 'Z',
  a0,
  a1,
  outline: [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)],
});

export const prism = (axis: Axis, [a0, a1]: Pair, outline: readonly OutlineCorner[]): Extrusion => ({
  is: 'extrusion',
  axis,
  a0,
  a1,
  outline,
});

export const turned = (axis: Axis, [u, v]: Pair, outline: readonly Pair[]): Turned => ({
  is: 'turned',
  axis,
  u,
  v,
  outline: outline.map(([a, r]) => ({ a, r })),
});

/** From a0 to a1, with the radii r0 and r1 at its ends. */
export const cone = (axis: Axis, at: Pair, [a0, a1]: Pair, [r0, r1]: Pair): Turned =>
  turned(axis, at, [[a0, 0], [a1, 0], ...(r1 > 0 ? [[a1, r1] as const] : []), ...(r0 > 0 ? [[a0, r0] as const] : [])]);

export const cylinder = (axis: Axis, at: Pair, ends: Pair, radius: number): Turned =>
  cone(axis, at, ends, [radius, radius]);

export const tube = (axis: Axis, at: Pair, [a0, a1]: Pair, outer: number, inner: number): Turned =>
  turned(axis, at, [
    [a0, inner],
    [a1, inner],
    [a1, outer],
    [a0, outer],
  ]);

/** The solid of a part of these bodies alone. */
export function solidOf(kernel: Kernel, bodies: readonly HandMade[]) {
  const placed = placedBodies(bodies);
  const solids = createSolids({ parts: () => [THE_PART], bodiesOf: () => placed }, () => kernel);
  solids.compute(THE_PART);
  return { solids, solid: solids.solidOf(THE_PART) };
}
