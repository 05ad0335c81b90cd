import type { Pose } from './pose.ts';
import { away, type Reach, takeEven, takeExact, takePoint } from './reach.ts';
import { type SeenEdges, shelveEdges } from './shelved-edges.ts';
import { farthestOnEdge } from './straight-edge.ts';
import { SLIVER_MM } from './sweep-piece.ts';

interface Triangles {
  readonly vertices: Float64Array | Float32Array;
  readonly triangles: Uint32Array;
}

/** Corners of more places along the line than this make no cells of their own. */
const MOST_BREAKS = 64;

/**
 * A closed mesh: flat faces are farthest at their edges, which `edgeWithin` knows exactly.
 *
 * @param slack how far the real surface may lie beyond the mesh along the line, mm, to both sides
 * @param rise how far it may lie beyond it away from the line
 */
export function meshReach({ vertices, triangles }: Triangles, pose: Pose, slack: number, rise = slack): Reach {
  const placed = new Float64Array(vertices.length);
  const { ox, oy, oz, ux, uy, uz, vx, vy, vz, ax, ay, az } = pose;
  for (let i = 0; i < vertices.length; i += 3) {
    const u = vertices[i]!;
    const v = vertices[i + 1]!;
    const a = vertices[i + 2]!;
    placed[i] = ox + ux * u + vx * v + ax * a;
    placed[i + 1] = oy + uy * u + vy * v + ay * a;
    placed[i + 2] = oz + uz * u + vz * v + az * a;
  }
  const shelves = shelveEdges(placed, triangles);
  const { lo, hi } = shelves;
  const breaks = breaksOf(placed, triangles, lo, hi);
  const seen: SeenEdges = { squared: -1, from: 0, to: 0, first: -1, last: -1 };
  return {
    lo: lo - slack,
    hi: hi + slack,
    breaks: slack === 0 ? breaks : breaks.flatMap((x) => [x - slack, x + slack]),
    within(from, to, found) {
      if (slack > 0) {
        shelves.look(from - slack, to + slack, seen);
        if (seen.squared < 0) return;
        found.most = Math.max(found.most, Math.sqrt(seen.squared) + rise);
      }
      shelves.look(from, to, seen);
      const even = Math.min(seen.first, seen.last);
      if (even >= 0) takeEven(found, Math.sqrt(even) + rise);
      if (seen.squared < 0) return;
      const [p, q] = [seen.from, seen.to];
      const [x, y, z] = farthestOnEdge(
        placed[p]!,
        placed[p + 1]!,
        placed[p + 2]!,
        placed[q]!,
        placed[q + 1]!,
        placed[q + 2]!,
        from,
        to,
      );
      if (slack > 0) takePoint(found, away(y, z), x, y, z);
      else takeExact(found, away(y, z), x, y, z);
    },
  };
}

/** Where faces stand square to the line, and every corner of a mesh with few. */
function breaksOf(placed: Float64Array, triangles: Uint32Array, lo: number, hi: number): readonly number[] {
  const all = new Set<number>();
  const flat = new Set<number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [placed[3 * triangles[t]!]!, placed[3 * triangles[t + 1]!]!, placed[3 * triangles[t + 2]!]!];
    if (all.size <= MOST_BREAKS) all.add(a).add(b).add(c);
    if (Math.max(a, b, c) - Math.min(a, b, c) <= SLIVER_MM && flat.size <= 4 * MOST_BREAKS) flat.add(a);
  }
  return all.size <= MOST_BREAKS ? [...all] : [lo, hi, ...flat];
}
