import type { BodyId, PartId } from '../base/ids.ts';
import type { MeshFault } from './manifold/kernel.ts';
import type { MassProperties, PartMesh, PartState, PlacedBody } from './placed.ts';

/** What the kernel made of a part; kept until one of its bodies really changes. */
export interface PartSolid {
  readonly part: PartId;
  readonly finished: MassProperties;
  /** Equal to `finished` (same object) when nothing is machined. */
  readonly asCast: MassProperties;
  /**
   * Bodies without which the part would be the very same, in every state that has them: they take nothing away, lie wholly
   * inside others, or are wholly undone by later ones. In list order.
   */
  readonly idle: readonly BodyId[];
}

export interface RefusedBody {
  readonly body: BodyId;
  readonly why: MeshFault;
}

/** The solids of a build over a kernel that is loaded. Works without one: then `solid` is never there. */
export interface Solids {
  /** Bodies of the part in list order, as placed; needs no kernel. */
  bodiesOf(part: PartId): readonly PlacedBody[];
  /** Bodies with a shape that the kernel did not take when the part was last computed; its solid is without them. */
  refusedOf(part: PartId): readonly RefusedBody[];
  /** Undefined until `compute` has been called for the part's present state, or when it has no body that is placed. */
  solidOf(part: PartId): PartSolid | undefined;
  /** Parts with bodies whose solid is not computed yet, in list order. The window computes them one after another between messages; the command line all at once. */
  pending(): readonly PartId[];
  /** @returns whether the part's solid differs from before. */
  compute(part: PartId): boolean;
  meshOf(part: PartId, state: PartState): PartMesh | undefined;
  /** Gives the kernel's memory back, when the build is closed. Figures that were computed stay. */
  drop(): void;
}
