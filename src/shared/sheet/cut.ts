import type { Loops } from './loops.ts';
import type { Point } from './sheet.ts';
import type { WeldedMesh } from './weld.ts';

/** What is left of a solid behind a cut, open where it was cut, and the outlines of the cut. */
export interface CutMesh {
  readonly mesh: WeldedMesh;
  /** In the part's two axes across the cut, in the order given. */
  readonly loops: Loops;
}

/** Axes as index and sign: to the right, up, and towards the eye. */
export type Axes = readonly (readonly [number, 1 | -1])[];

/**
 * Cuts a mesh across the line of sight and keeps what lies behind. Corners in the plane of the cut count as before it, all
 * alike, so that a cut through a flat face shows the material behind the face. The outlines follow from edge to edge of
 * the mesh and so close exactly.
 *
 * @param at place of the cut towards the eye (sign · coordinate), mm.
 */
export function cutMesh(mesh: WeldedMesh, axes: Axes, at: number): CutMesh {
  const { points, triangles } = mesh;
  const [towards, sign] = axes[2]!;
  const inPlane = Math.max(1e-9, 1e-6 * mesh.size);
  const corners = points.length / 3;
  const height = Float64Array.from({ length: corners }, (_, i) => {
    const above = sign * points[3 * i + towards]! - at;
    return Math.abs(above) <= inPlane ? 0 : above;
  });
  const added: number[] = [];
  const crossings = new Map<number, number>();
  /** The corner at which the plane cuts an edge from a kept corner to one that goes. */
  const crossing = (kept: number, gone: number): number => {
    if (height[gone] === 0) return gone;
    const key = Math.min(kept, gone) * corners + Math.max(kept, gone);
    const known = crossings.get(key);
    if (known !== undefined) return known;
    const t = height[kept]! / (height[kept]! - height[gone]!);
    for (let k = 0; k < 3; k++) {
      const from = points[3 * kept + k]!;
      added.push(k === towards ? sign * at : from + t * (points[3 * gone + k]! - from));
    }
    const corner = corners + added.length / 3 - 1;
    crossings.set(key, corner);
    return corner;
  };

  const out: number[] = [];
  const bodyOf: number[] = [];
  const faceOf: number[] = [];
  const next = new Map<number, number[]>();
  const keep = (t: number, ring: readonly number[]) => {
    for (let k = 2; k < ring.length; k++) {
      const corner = [ring[0]!, ring[k - 1]!, ring[k]!];
      if (corner[0] === corner[1] || corner[1] === corner[2] || corner[2] === corner[0]) continue;
      out.push(...corner);
      bodyOf.push(mesh.bodyOf[t]!);
      faceOf.push(mesh.faceOf[t]!);
    }
  };
  for (let t = 0; t < triangles.length / 3; t++) {
    const ring: number[] = [];
    let [leaves, enters] = [-1, -1];
    for (let k = 0; k < 3; k++) {
      const a = triangles[3 * t + k]!;
      const b = triangles[3 * t + ((k + 1) % 3)]!;
      const [isKept, isNextKept] = [height[a]! < 0, height[b]! < 0];
      if (isKept) ring.push(a);
      if (isKept === isNextKept) continue;
      const corner = isKept ? crossing(a, b) : crossing(b, a);
      ring.push(corner);
      if (isKept) leaves = corner;
      else enters = corner;
    }
    if (ring.length === 0) continue;
    keep(t, ring);
    // Along the border of what is kept, with the material on the left as the eye sees it.
    if (leaves !== enters) {
      const list = next.get(leaves);
      if (list) list.push(enters);
      else next.set(leaves, [enters]);
    }
  }

  const all = new Float64Array(points.length + added.length);
  all.set(points);
  all.set(added, points.length);
  return {
    mesh: {
      ...mesh,
      points: all,
      triangles: Uint32Array.from(out),
      bodyOf: Uint32Array.from(bodyOf),
      faceOf: Uint32Array.from(faceOf),
    },
    loops: traceLoops(next, (corner): Point => {
      const [[u, uSign], [v, vSign]] = [axes[0]!, axes[1]!];
      return [uSign * all[3 * corner + u]!, vSign * all[3 * corner + v]!];
    }),
  };
}

/** Follows the links until each has been gone once; as many leave a corner as enter it, so that every way closes. */
function traceLoops(next: Map<number, number[]>, pointOf: (corner: number) => Point): Loops {
  const loops: Point[][] = [];
  for (const [start, links] of next) {
    while (links.length > 0) {
      const loop: Point[] = [];
      let at = start;
      do {
        loop.push(pointOf(at));
        const onwards: number | undefined = next.get(at)?.pop();
        // A mesh that is not closed has ways that end; what is there of them is drawn.
        if (onwards === undefined) break;
        at = onwards;
      } while (at !== start);
      if (loop.length > 2) loops.push(loop);
    }
  }
  return loops;
}
