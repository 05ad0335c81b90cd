import type { CodedMesh } from '../../build/mesh-code.ts';

/**
 * The edges of a mesh: half edge h runs from corner h of `triangles` to the next corner of the same triangle, and all half
 * edges between the same two vertices make one ring.
 */
export interface Edges {
  /** By half edge: the next of its ring; itself when it stands alone. */
  readonly ring: Int32Array;
  /** One half edge of every edge. */
  readonly firsts: Int32Array;
}

/** The vertex at which a half edge begins. */
export const startOf = (triangles: Uint32Array, half: number): number => triangles[half]!;
/** The vertex at which a half edge ends. */
export const endOf = (triangles: Uint32Array, half: number): number => triangles[half % 3 === 2 ? half - 2 : half + 1]!;

export function edgesOf({ triangles }: CodedMesh): Edges {
  const count = triangles.length;
  const size = 2 ** Math.ceil(Math.log2(Math.max(16, count * 2)));
  const slots = new Int32Array(size).fill(-1);
  const ring = new Int32Array(count);
  const firsts = new Int32Array(count);
  let edges = 0;
  for (let half = 0; half < count; half++) {
    const a = startOf(triangles, half);
    const b = endOf(triangles, half);
    const low = Math.min(a, b);
    const high = Math.max(a, b);
    let hash = Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b);
    hash ^= hash >>> 15;
    let slot = hash & (size - 1);
    for (;;) {
      const first = slots[slot]!;
      if (first < 0) {
        slots[slot] = half;
        ring[half] = half;
        firsts[edges++] = half;
        break;
      }
      const p = startOf(triangles, first);
      const q = endOf(triangles, first);
      if (Math.min(p, q) === low && Math.max(p, q) === high) {
        ring[half] = ring[first]!;
        ring[first] = half;
        break;
      }
      slot = (slot + 1) & (size - 1);
    }
  }
  return { ring, firsts: firsts.slice(0, edges) };
}

/** How the triangles at an edge stand to each other. */
export interface EdgeCounts {
  /** Edges at which an odd number of triangles meet: there the surface ends, or a stray face begins. */
  readonly odd: readonly number[];
  /** Edges with an even number, but not as many one way as the other: some of the triangles face the wrong way. */
  readonly turned: readonly number[];
}

export function countEdges({ triangles }: CodedMesh, edges: Edges): EdgeCounts {
  const odd: number[] = [];
  const turned: number[] = [];
  for (const first of edges.firsts) {
    let count = 0;
    let balance = 0;
    const from = startOf(triangles, first);
    for (let half = first; ; ) {
      count++;
      balance += startOf(triangles, half) === from ? 1 : -1;
      half = edges.ring[half]!;
      if (half === first) break;
    }
    if (count % 2 === 1) odd.push(first);
    else if (balance !== 0) turned.push(first);
  }
  return { odd, turned };
}
