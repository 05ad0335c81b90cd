import type { Pose } from './pose.ts';
import { away, type Reach, takeEven, takeExact, takePoint } from './reach.ts';
import { edgeWithin, farthestOnEdge } from './straight-edge.ts';
import { SLIVER_MM } from './sweep-piece.ts';

interface Triangles {
  readonly vertices: Float64Array | Float32Array;
  readonly triangles: Uint32Array;
}

/** Edges are looked up by the shelves that they reach into, so that a stretch looks at its own only. */
const MOST_SHELVES = 256;

/** Corners of more places along the line than this make no cells of their own. */
const MOST_BREAKS = 64;

/**
 * A closed mesh: flat faces are farthest at their edges, which `edgeWithin` knows exactly.
 *
 * @param slack how far the real surface may lie beyond the mesh, mm, in any direction: added to its reach and to its ends
 */
export function meshReach({ vertices, triangles }: Triangles, pose: Pose, slack: number, rise = slack): Reach {
  const count = vertices.length / 3;
  const placed = new Float64Array(vertices.length);
  const { ox, oy, oz, ux, uy, uz, vx, vy, vz, ax, ay, az } = pose;
  for (let i = 0; i < count; i++) {
    const [u, v, a] = [vertices[3 * i]!, vertices[3 * i + 1]!, vertices[3 * i + 2]!];
    placed[3 * i] = ox + ux * u + vx * v + ax * a;
    placed[3 * i + 1] = oy + uy * u + vy * v + ay * a;
    placed[3 * i + 2] = oz + uz * u + vz * v + az * a;
  }
  let [lo, hi] = [Infinity, -Infinity];
  for (const corner of triangles) {
    lo = Math.min(lo, placed[3 * corner]!);
    hi = Math.max(hi, placed[3 * corner]!);
  }
  const shelves = shelve(placed, triangles, lo, hi);
  const seen = new Uint32Array(triangles.length);
  let round = 0;
  const each = (from: number, to: number, visit: (p: number, q: number) => void) => {
    round++;
    for (let s = shelves.of(from); s <= shelves.of(to); s++) {
      for (let k = shelves.start[s]!; k < shelves.start[s + 1]!; k++) {
        const edge = shelves.edges[k]!;
        if (seen[edge] === round) continue;
        seen[edge] = round;
        visit(3 * triangles[edge]!, 3 * triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!);
      }
    }
  };
  const squared = (p: number, q: number, from: number, to: number) =>
    edgeWithin(placed[p]!, placed[p + 1]!, placed[p + 2]!, placed[q]!, placed[q + 1]!, placed[q + 2]!, from, to);
  const breaks = breaksOf(placed, triangles, lo, hi);
  return {
    lo: lo - slack,
    hi: hi + slack,
    breaks: slack === 0 ? breaks : breaks.flatMap((x) => [x - slack, x + slack]),
    within(from, to, found) {
      let [best, p, q] = [-1, 0, 0];
      each(from - slack, to + slack, (a, b) => {
        const r = squared(a, b, from - slack, to + slack);
        if (r > best) [best, p, q] = [r, a, b];
      });
      if (best < 0) return;
      if (slack > 0) {
        found.most = Math.max(found.most, Math.sqrt(best) + rise);
        best = -1;
        each(from, to, (a, b) => {
          const r = squared(a, b, from, to);
          if (r > best) [best, p, q] = [r, a, b];
        });
      }
      const width = (to - from) * 1e-3;
      const near = [-1, -1];
      each(from, from + width, (a, b) => {
        near[0] = Math.max(near[0]!, squared(a, b, from, from + width));
      });
      each(to - width, to, (a, b) => {
        near[1] = Math.max(near[1]!, squared(a, b, to - width, to));
      });
      const least = Math.min(near[0]!, near[1]!);
      if (least >= 0) takeEven(found, Math.sqrt(least) + rise);
      if (best < 0) return;
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
      (slack > 0 ? takePoint : takeExact)(found, away(y, z), x, y, z);
    },
  };
}

interface Shelves {
  readonly of: (x: number) => number;
  /** The edges of shelf s are `edges[start[s]]` up to `edges[start[s + 1]]`; edge 3 t + k leaves corner k of triangle t. */
  readonly start: Uint32Array;
  readonly edges: Uint32Array;
}

function shelve(placed: Float64Array, triangles: Uint32Array, lo: number, hi: number): Shelves {
  const shelves = Math.max(1, Math.min(MOST_SHELVES, Math.floor(triangles.length / 12)));
  const scale = shelves / (hi - lo || 1);
  const of = (x: number) => Math.max(0, Math.min(shelves - 1, Math.floor((x - lo) * scale)));
  const span = (edge: number): readonly [number, number] => {
    const a = placed[3 * triangles[edge]!]!;
    const b = placed[3 * triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!]!;
    // An edge square to the line, and its like, count on both sides of a shelf's end.
    return [of(Math.min(a, b) - SLIVER_MM), of(Math.max(a, b) + SLIVER_MM)];
  };
  const start = new Uint32Array(shelves + 1);
  for (let edge = 0; edge < triangles.length; edge++) {
    const [first, last] = span(edge);
    for (let s = first; s <= last; s++) start[s + 1]!++;
  }
  for (let s = 0; s < shelves; s++) start[s + 1]! += start[s]!;
  const edges = new Uint32Array(start[shelves]!);
  const next = start.slice();
  for (let edge = 0; edge < triangles.length; edge++) {
    const [first, last] = span(edge);
    for (let s = first; s <= last; s++) edges[next[s]!++] = edge;
  }
  return { of, start, edges };
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
