import type { Result } from '../../base/result.ts';
import type { Axis } from '../../build/station.ts';
import type { FlatRegion } from '../flat-region.ts';
import type { Vec3 } from '../placed.ts';

declare const brand: unique symbol;

/** A solid in the kernel's memory, never an empty one. Whoever made it releases it, once. */
export interface KernelSolid {
  readonly [brand]: 'solid of the kernel';
}

/** A closed surface, its triangles counter-clockwise seen from outside. */
export interface ClosedMesh {
  /** x, y, z of each vertex in mm. */
  readonly vertices: Float64Array;
  readonly triangles: Uint32Array;
  /** Per triangle: a number of the maker's own, which whatever is left of the triangle keeps for ever. */
  readonly facetOf: Uint32Array;
}

/** Why the kernel cannot take a mesh: a closed list. */
export const meshFaults = ['no triangles', 'not closed', 'not finite', 'inside out', 'too large', 'not taken'] as const;
export type MeshFault = (typeof meshFaults)[number];

/** The surface of a solid, as the kernel gives it back. */
export interface KernelMesh {
  /** x, y, z of each vertex in mm, rounded to 24 bits. */
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
  /** Per triangle: the number that it had in the mesh that it comes from. */
  readonly facetOf: Uint32Array;
  /** Triangles `from` up to, not including, `to` come from the mesh that was taken as `source`. */
  readonly runs: readonly { readonly source: number; readonly from: number; readonly to: number }[];
}

/** The boolean kernel. An empty solid is `undefined` throughout, so that none takes memory. */
export interface Kernel {
  /**
   * Takes a mesh in. The places of its vertices stay exact (float64).
   *
   * @param source a number from `reserve`; one is reserved where none is given.
   * @returns the solid, and the number by which its triangles are known in whatever is made of it.
   */
  take(mesh: ClosedMesh, source?: number): Result<{ readonly solid: KernelSolid; readonly source: number }, MeshFault>;
  /** Reserves so many numbers in a row for meshes to be taken in. @returns the first. */
  reserve(count: number): number;
  /** What lies in any of them; a new solid, also of one. */
  unite(solids: readonly KernelSolid[]): KernelSolid | undefined;
  /** What lies in the first and not in the second; a new solid. */
  subtract(from: KernelSolid, what: KernelSolid): KernelSolid | undefined;
  /** What lies in both; a new solid. */
  intersect(a: KernelSolid, b: KernelSolid): KernelSolid | undefined;
  /** Volume in mm³ of the solid with its flat facets, in float64 with compensated sums. */
  volumeOf(solid: KernelSolid): number;
  /** Surface in mm² of the solid with its flat facets. */
  areaOf(solid: KernelSolid): number;
  /** The box about the solid, float64. */
  boxOf(solid: KernelSolid): { readonly min: Vec3; readonly max: Vec3 };
  meshOf(solid: KernelSolid): KernelMesh;
  /** Made larger along X, Y and Z, about the origin, by factors above nought; a new solid. */
  stretch(solid: KernelSolid, factors: Vec3): KernelSolid;
  /** With every corner moved, by a way that neither tears nor folds; a new solid. */
  bend(solid: KernelSolid, move: (point: Vec3) => Vec3): KernelSolid | undefined;
  /** What lies between two planes across an axis; a new solid. */
  between(solid: KernelSolid, axis: Axis, low: number, high: number): KernelSolid | undefined;
  /** The pieces that do not hang together, hollows staying in theirs; new solids, also of one. */
  piecesOf(solid: KernelSolid): readonly KernelSolid[];
  /**
   * Where a plane across the axis cuts the solid, seen against the axis, so that nothing is mirrored: across X in (Y, Z), across
   * Y in (Z, X), across Z in (X, Y). At the very end of a solid it may be empty: cut a little within.
   */
  sliceOf(solid: KernelSolid, axis: Axis, at: number): FlatRegion;
  /** The shadow that the solid throws along the axis, in the same plane. */
  shadowOf(solid: KernelSolid, axis: Axis): FlatRegion;
  /** The border moved outwards by so many mm (inwards where negative), openings likewise; corners stay sharp, or are rounded. */
  grow(region: FlatRegion, mm: number, corners: 'sharp' | 'round'): FlatRegion;
  /** What lies in both. */
  common(a: FlatRegion, b: FlatRegion): FlatRegion;
  /** What lies in the first and not in the second. */
  without(a: FlatRegion, b: FlatRegion): FlatRegion;
  release(solid: KernelSolid): void;
  /** Number of solids that were made and not released: a test sees it come back to where it was. */
  readonly live: number;
}

/** The two axes of the plane across an axis, in which sections are seen. */
export const planeAcross: Readonly<Record<Axis, readonly [Axis, Axis]>> = {
  X: ['Y', 'Z'],
  Y: ['Z', 'X'],
  Z: ['X', 'Y'],
};

/** The kernel gave up on solids that it had taken; not the user's doing. */
export class KernelFault extends Error {
  override readonly name = 'KernelFault';
}
