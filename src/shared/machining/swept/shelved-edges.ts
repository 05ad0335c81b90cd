import { SLIVER_MM } from './sweep-piece.ts';

/** What was seen of the edges in a stretch. */
export interface SeenEdges {
  /** The greatest squared distance from the line; −1 where nothing is. */
  squared: number;
  /** Its edge: where the coordinates of both ends begin. */
  from: number;
  to: number;
  /** The greatest squared distance where the stretch begins and where it ends; −1 where no edge passes. */
  first: number;
  last: number;
}

/** The edges of a mesh, put on shelves along the line, so that a stretch looks at its own only. */
export interface ShelvedEdges {
  readonly lo: number;
  readonly hi: number;
  /** Shelves that lie wholly within the stretch answer by what they know of themselves. */
  look(from: number, to: number, seen: SeenEdges): void;
}

const MOST_SHELVES = 256;
/** Fewer edges than this to a shelf are not worth one. */
const FEWEST_EDGES = 12;

/** @param placed x, y, z of each vertex, seen from the line */
export function shelveEdges(placed: Float64Array, triangles: Uint32Array): ShelvedEdges {
  let lo = Infinity;
  let hi = -Infinity;
  for (const corner of triangles) {
    lo = Math.min(lo, placed[3 * corner]!);
    hi = Math.max(hi, placed[3 * corner]!);
  }
  const count = Math.max(1, Math.min(MOST_SHELVES, Math.floor(triangles.length / FEWEST_EDGES)));
  const width = (hi - lo) / count || 1;
  const shelfOf = (x: number) => Math.max(0, Math.min(count - 1, Math.floor((x - lo) / width)));
  // Edge e leaves corner e of the triangles, for the next corner of its triangle.
  const endOf = (edge: number) => triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!;
  const firstOf = (edge: number) =>
    shelfOf(Math.min(placed[3 * triangles[edge]!]!, placed[3 * endOf(edge)]!) - SLIVER_MM);
  const lastOf = (edge: number) =>
    shelfOf(Math.max(placed[3 * triangles[edge]!]!, placed[3 * endOf(edge)]!) + SLIVER_MM);
  const start = new Uint32Array(count + 1);
  for (let edge = 0; edge < triangles.length; edge++) {
    for (let s = firstOf(edge); s <= lastOf(edge); s++) start[s + 1]!++;
  }
  for (let s = 0; s < count; s++) start[s + 1]! += start[s]!;
  const edges = new Uint32Array(start[count]!);
  const next = start.slice();
  for (let edge = 0; edge < triangles.length; edge++) {
    for (let s = firstOf(edge); s <= lastOf(edge); s++) edges[next[s]!++] = edge;
  }

  const edgesOf = { placed, triangles, edges };
  // What each shelf knows of itself: the greatest within it, and the edge that has it.
  const greatest = new Float64Array(count);
  const ofEdge = new Uint32Array(2 * count);
  const seen: SeenEdges = { squared: -1, from: 0, to: 0, first: -1, last: -1 };
  for (let s = 0; s < count; s++) {
    clear(seen);
    lookAt(edgesOf, start[s]!, start[s + 1]!, lo + s * width, lo + (s + 1) * width, seen);
    greatest[s] = seen.squared;
    ofEdge[2 * s] = seen.from;
    ofEdge[2 * s + 1] = seen.to;
  }
  return {
    lo,
    hi,
    look(from, to, into) {
      clear(into);
      const first = shelfOf(from);
      const last = shelfOf(to);
      for (let s = first; s <= last; s++) {
        if (s === first || s === last) lookAt(edgesOf, start[s]!, start[s + 1]!, from, to, into);
        else if (greatest[s]! > into.squared) {
          into.squared = greatest[s]!;
          into.from = ofEdge[2 * s]!;
          into.to = ofEdge[2 * s + 1]!;
        }
      }
    },
  };
}

interface Edges {
  readonly placed: Float64Array;
  readonly triangles: Uint32Array;
  readonly edges: Uint32Array;
}

/**
 * Takes in what edges `begin` up to, not including, `end` have between `from` and `to`: the same as `edgeWithin`, written out
 * because it runs for every edge of every cell.
 */
function lookAt(
  { placed, triangles, edges }: Edges,
  begin: number,
  end: number,
  from: number,
  to: number,
  seen: SeenEdges,
): void {
  for (let k = begin; k < end; k++) {
    const edge = edges[k]!;
    let p = 3 * triangles[edge]!;
    let q = 3 * triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!;
    if (placed[p]! > placed[q]!) [p, q] = [q, p];
    const x0 = placed[p]!;
    const x1 = placed[q]!;
    if (x1 - from <= SLIVER_MM || to - x0 <= SLIVER_MM) continue;
    const y0 = placed[p + 1]!;
    const z0 = placed[p + 2]!;
    const y1 = placed[q + 1]!;
    const z1 = placed[q + 2]!;
    let low = y0 * y0 + z0 * z0;
    let high = y1 * y1 + z1 * z1;
    if (x0 < from) {
      const t = (from - x0) / (x1 - x0);
      const y = y0 + t * (y1 - y0);
      const z = z0 + t * (z1 - z0);
      low = y * y + z * z;
    }
    if (x1 > to) {
      const t = (x1 - to) / (x1 - x0);
      const y = y1 + t * (y0 - y1);
      const z = z1 + t * (z0 - z1);
      high = y * y + z * z;
    }
    if (x0 - from <= SLIVER_MM && low > seen.first) seen.first = low;
    if (to - x1 <= SLIVER_MM && high > seen.last) seen.last = high;
    if (low <= seen.squared && high <= seen.squared) continue;
    seen.squared = Math.max(low, high);
    seen.from = p;
    seen.to = q;
  }
}

function clear(seen: SeenEdges): void {
  seen.squared = -1;
  seen.first = -1;
  seen.last = -1;
}
