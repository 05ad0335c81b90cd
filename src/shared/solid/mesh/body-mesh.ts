import type { Axis } from '../../build/station.ts';
import type { ClosedMesh } from '../manifold/kernel.ts';

/** What a flat facet stands for when the surface is round: a piece of a cylinder or cone, its corners on the surface. */
export interface Round {
  /** Where the axis passes, across the body's axis. */
  readonly u: number;
  readonly v: number;
  /** Radius of the true surface at `a` along the axis: `radius + slope · a`. */
  readonly radius: number;
  readonly slope: number;
  /** Unit direction from the axis to the middle of the facet. */
  readonly middleU: number;
  readonly middleV: number;
  /** Cosine of half the angle that the facet spans: the facet's distance from the axis over the radius. */
  readonly cosHalf: number;
}

/** A flat piece of a body's surface. */
export interface Facet {
  /** The face that it belongs to: pieces of one smooth face share it. */
  readonly face: number;
  readonly round: Round | undefined;
}

/** The mesh of one body where its stations place it, before any repeats. */
export interface BodyMesh {
  readonly mesh: ClosedMesh;
  /** By the numbers in `mesh.facetOf`. */
  readonly facets: readonly Facet[];
  /** The axis along which `Round` measures; any for a mesh without round facets. */
  readonly axis: Axis;
  /** Faces are numbered from 0 up to this. */
  readonly faces: number;
}

/** Gathers vertices and triangles given in (u, v, a) of an axis, and turns them into X, Y, Z. */
export interface MeshDraft {
  vertex(u: number, v: number, a: number): number;
  /** Counter-clockwise from outside, with u, v, a taken as a right-handed frame. */
  triangle(a: number, b: number, c: number, facet: number): void;
  done(): ClosedMesh;
}

/** Where u, v and a go in X, Y, Z, and whether that turns a right hand into a left one. */
const frames: Readonly<
  Record<Axis, { readonly u: number; readonly v: number; readonly a: number; readonly left: boolean }>
> = {
  X: { u: 1, v: 2, a: 0, left: false },
  Y: { u: 0, v: 2, a: 1, left: true },
  Z: { u: 0, v: 1, a: 2, left: false },
};

export const frameOf = (axis: Axis) => frames[axis];

export function meshDraft(axis: Axis): MeshDraft {
  const frame = frames[axis];
  const vertices: number[] = [];
  const triangles: number[] = [];
  const facets: number[] = [];
  return {
    vertex: (u, v, a) => {
      const at = vertices.length;
      vertices.push(0, 0, 0);
      vertices[at + frame.u] = u;
      vertices[at + frame.v] = v;
      vertices[at + frame.a] = a;
      return at / 3;
    },
    triangle: (a, b, c, facet) => {
      if (frame.left) triangles.push(a, c, b);
      else triangles.push(a, b, c);
      facets.push(facet);
    },
    done: () => ({
      vertices: Float64Array.from(vertices),
      triangles: Uint32Array.from(triangles),
      facetOf: Uint32Array.from(facets),
    }),
  };
}
