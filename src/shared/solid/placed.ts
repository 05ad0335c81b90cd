import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import type { Body } from '../build/body.ts';
import type { Axis } from '../build/station.ts';

/** A point or size in mm along X, Y, Z of the part, measured from its datums. */
export type Vec3 = readonly [x: number, y: number, z: number];

/** A move of a body: three rows of (rotation | shift). Rotations and mirror images only, no scaling. */
export type Move = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

/**
 * One corner of an outline; `bulge` = tan(quarter of the arc's angle) of the segment that leaves it, 0 for a straight one.
 * Positive where the arc turns to the left, as a rounded convex corner of a counter-clockwise outline does (it then lies to
 * the right of its chord). Never more than half a turn, so |bulge| ≤ 1.
 */
export interface OutlineCorner {
  readonly u: number;
  readonly v: number;
  readonly bulge: number;
}

/** A closed outline across `axis` (u, v = the two other axes in the order of the alphabet), drawn out from `a0` to `a1` (a0 < a1). Counter-clockwise. */
export interface Extrusion {
  readonly is: 'extrusion';
  readonly axis: Axis;
  readonly a0: number;
  readonly a1: number;
  readonly outline: readonly OutlineCorner[];
}

/** A closed outline of (a along the axis, r ≥ 0) turned about the axis through (u, v). Sections are straight lines. Counter-clockwise with r to the left. */
export interface Turned {
  readonly is: 'turned';
  readonly axis: Axis;
  readonly u: number;
  readonly v: number;
  readonly outline: readonly { readonly a: number; readonly r: number }[];
}

/** A closed mesh, already turned and moved to its place. */
export interface MeshShape {
  readonly is: 'mesh';
  readonly vertices: Float64Array;
  readonly triangles: Uint32Array;
}

/** The exact, analytic form of a body: everything (kernel meshes, swept radii, clearances) follows from it. */
export type ExactShape = Extrusion | Turned | MeshShape;

/**
 * Stable codes of what can be wrong with a shape whose places and sizes are all known:
 * - `outline-crosses`: its outline crosses or touches itself;
 * - `radius-too-large`: a rounding does not fit on the sides that meet at its corner;
 * - `bore-not-smaller`: a tube's bore is as wide as the tube or wider;
 * - `thread-without-pitch`: the pitch of a threaded hole is not known, so neither is its tap drill;
 * - `counterbore-not-wider`, `counterbore-too-deep`, `countersink-not-wider`, `countersink-too-deep`;
 * - `angle-out-of-range`: the angle of a countersink or drill point is not between 0° and 180°;
 * - `count-not-whole`: a count is no whole number of at least 1;
 * - `too-many-copies`: more copies than can be shown (`MOST_COPIES`);
 * - `size-does-not-fit`: a dimension measures something that cannot serve here;
 * - `mesh-inside-out`: the faces of an imported solid look inwards, or it encloses nothing.
 */
export const shapeProblemCodes = [
  'outline-crosses',
  'radius-too-large',
  'bore-not-smaller',
  'thread-without-pitch',
  'counterbore-not-wider',
  'counterbore-too-deep',
  'countersink-not-wider',
  'countersink-too-deep',
  'angle-out-of-range',
  'count-not-whole',
  'too-many-copies',
  'size-does-not-fit',
  'mesh-inside-out',
] as const;
export type ShapeProblemCode = (typeof shapeProblemCodes)[number];

/** Why a body has no solid. */
export type BodyProblem =
  /** Stations that no dimension places, and dimensions without a value, that it needs. */
  | { readonly why: 'not-placed'; readonly stations: readonly StationId[]; readonly dimensions: readonly DimensionId[] }
  /** Two of its places coincide, or a size is zero or less. `at` names them. */
  | { readonly why: 'no-size'; readonly at: readonly (StationId | DimensionId)[] }
  /** Its outline crosses itself, a radius does not fit its corner, a counterbore is narrower than its hole, … */
  | { readonly why: 'shape'; readonly code: ShapeProblemCode; readonly at: readonly (StationId | DimensionId)[] };

/** A body as its stations and sizes place it. */
export interface PlacedBody {
  readonly record: Body;
  /** Undefined exactly when `problem` is there. */
  readonly shape: ExactShape | undefined;
  /** Its copies, the first being the body itself where it stands. */
  readonly moves: readonly Move[];
  readonly problem: BodyProblem | undefined;
  /** What it hangs on directly. */
  readonly stations: readonly StationId[];
  readonly dimensions: readonly DimensionId[];
}

/** The two states of a part that matter before machining plans exist: as it comes from the mould, and as the drawing wants it. */
export type PartState = 'as cast' | 'finished';

export interface MassProperties {
  readonly volumeMm3: number;
  readonly areaMm2: number;
  /** Centre of volume. */
  readonly centre: Vec3;
  readonly boxMin: Vec3;
  readonly boxMax: Vec3;
  /** Moments of volume about the centre, mm⁵: xx, yy, zz, xy, yz, zx (products positive as ∫xy dV). Times density for inertia. */
  readonly inertia: readonly [number, number, number, number, number, number];
  /** Number of pieces that hang together; more than one is a detached part. */
  readonly pieces: number;
}

/** A triangle mesh for showing and for drawing views; `body`/`face` say which body and which of its faces a triangle lies on. */
export interface PartMesh {
  /** x, y, z of each vertex, mm. */
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
  /** Per triangle: index into `bodies`. */
  readonly bodyOf: Uint16Array;
  /** Per triangle: face number within its body (a flat side, a turned section, …): triangles of one smooth face share it. */
  readonly faceOf: Uint32Array;
  readonly bodies: readonly BodyId[];
}
