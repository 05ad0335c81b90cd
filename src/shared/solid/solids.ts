import type { BodyId, PartId } from '../base/ids.ts';
import type { Pieces } from '../base/pieces.ts';
import type { Axis } from '../build/station.ts';
import type { MeshFault } from './manifold/kernel.ts';
import type { MassProperties, PartMesh, PartState, PlacedBody, Vec3 } from './placed.ts';

/** Metal between two faces, or within one, that is thin. */
export interface ThinWall<B = BodyId> {
  /** The bodies whose faces bound it, in list order; the same one twice where both are of one. */
  readonly bodies: readonly [B, B];
  /** 0 where the metal runs out to a sharp edge. */
  readonly thicknessMm: number;
  /** The middle of the thinnest place. */
  readonly at: Vec3;
}

/** Where a round hole comes nearest to a face that runs along beside it. */
export interface HoleEdge<B = BodyId> {
  readonly body: B;
  /** Which of its copies, from 0. */
  readonly copy: number;
  /** The body whose face it is. */
  readonly beside: B;
  /** Of the length of the hole that comes nearest: a counterbore may. */
  readonly diameterMm: number;
  /** From the hole's axis to the face. */
  readonly centreMm: number;
  /** Metal between the hole and the face; 0 where the hole has cut into it. */
  readonly metalMm: number;
  readonly at: Vec3;
}

/** A flat face of a part across one of its axes. */
export interface FlatFace {
  readonly axis: Axis;
  /** Outwards along the axis, or against it. */
  readonly looks: 1 | -1;
  readonly atMm: number;
  readonly areaMm2: number;
}

/** What the faces of a part say of it beyond its figures. */
export interface PartFaces {
  /** Of the part as cast: for each two bodies the thinnest place under `THICKEST_WALL_MM`, thinnest first. */
  readonly walls: readonly ThinWall[];
  /** Of the finished part: for each round hole that has a face near beside it, in list order. */
  readonly holes: readonly HoleEdge[];
  /** Of the finished part, largest first. */
  readonly flats: readonly FlatFace[];
  /** The bodies of each piece but the largest, where the part does not hang together. */
  readonly loose: Readonly<Record<PartState, readonly (readonly BodyId[])[]>>;
}

/**
 * How a figure came about: `live` from a solid of few facets, there as soon as a body changes; `measured` from one of many, a
 * moment later. Both take in what the facets leave out, so that whole round bodies hold the same. Where round surfaces cut one
 * another, live volumes and moments are off by up to 0.1 ‰ and surfaces by up to 1.5 ‰ (random bodies, see the tests); measured
 * volumes by less than a millionth. Live round bodies that only just touch, by less than 0.4 mm, may count as two pieces.
 */
export type Level = 'live' | 'measured';

/** Figures of a part at the best level that there is of its present bodies. */
export interface PartFigures {
  readonly level: Level;
  readonly finished: MassProperties;
  /** The same object as `finished` where both states are one. */
  readonly asCast: MassProperties;
}

/** What the kernel made of a part; kept until one of its bodies really changes. */
export interface PartSolid extends PartFigures {
  readonly part: PartId;
  readonly finished: MassProperties;
  /** Equal to `finished` (same object) when nothing is machined, or nothing is poured: the part is cut from the solid. */
  readonly asCast: MassProperties;
  /**
   * Bodies without which the part would be the very same, in every state that has them: they take nothing away, lie wholly
   * inside others, or are wholly undone by later ones. In list order.
   */
  readonly idle: readonly BodyId[];
  readonly faces: PartFaces;
}

export interface RefusedBody {
  readonly body: BodyId;
  readonly why: MeshFault;
}

/** What measuring finds of a part. */
export interface MeasuredPart {
  /** Undefined where nothing is left of the part, or the kernel gave up on it. */
  readonly solid: PartSolid | undefined;
  readonly refused: readonly RefusedBody[];
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
  /** The same in pieces; another part may be computed before it is done with, or this one begun anew. */
  computing(part: PartId): Pieces<boolean>;
  /** What `compute` found of the part's present bodies. */
  measuredOf(part: PartId): MeasuredPart;
  /**
   * Takes over what was found elsewhere, by `compute` over the same bodies; there is no mesh of it here then. Nothing is taken
   * when the part has other bodies by now. @returns whether the part's solid differs from before.
   */
  take(part: PartId, bodies: readonly PlacedBody[], measured: MeasuredPart): boolean;
  /** Measured, for whatever is worked out from it; undefined until `compute` has been called for the part's present state. */
  meshOf(part: PartId, state: PartState): PartMesh | undefined;
  /** Whether `computeLive` has something to do: also for a part that is measured already, so that its next edit is quick. */
  wantsLive(part: PartId): boolean;
  /** Works the live figures out, of what the change touched only. @returns whether it did anything. */
  computeLive(part: PartId): boolean;
  /** The measured figures, else the live ones, of the part's present bodies. */
  figuresOf(part: PartId): PartFigures | undefined;
  /** The live mesh, which is for showing only: it is parted along planes. Undefined while it is not worked out. */
  liveMeshOf(part: PartId, state: PartState): PartMesh | undefined;
  /**
   * What may be said of the part now: its solid, and until that is measured anew the live figures with what the surfaces said
   * last, so that nothing is unsaid for a moment. Undefined until it was measured once.
   */
  latestOf(part: PartId): PartSolid | undefined;
  /** Gives the kernel's memory back, when the build is closed. Figures that were computed stay. */
  drop(): void;
}
