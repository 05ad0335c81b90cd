import { SLIVER_MM } from './sweep-piece.ts';

/**
 * The greatest squared distance from the line, y² + z², over that part of a straight edge which lies between `from` and `to`;
 * −1 where that is nothing, or no longer along the line than `sliver`. Along an edge it bends upwards, so it is greatest at one
 * of the two ends.
 */
export function edgeWithin(
  x0: number,
  y0: number,
  z0: number,
  x1: number,
  y1: number,
  z1: number,
  from: number,
  to: number,
  sliver = SLIVER_MM,
): number {
  const lo = Math.min(x0, x1);
  const hi = Math.max(x0, x1);
  if (hi - from <= sliver || to - lo <= sliver) return -1;
  if (lo >= from && hi <= to) return Math.max(y0 * y0 + z0 * z0, y1 * y1 + z1 * z1);
  const p = Math.max(lo, from);
  const q = Math.min(hi, to);
  return Math.max(squaredAt(p, x0, y0, z0, x1, y1, z1), squaredAt(q, x0, y0, z0, x1, y1, z1));
}

/** y² + z² of the edge's point at x. */
function squaredAt(x: number, x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): number {
  // From the nearer end, so that the ends themselves come out exactly.
  if (Math.abs(x - x1) < Math.abs(x - x0)) return squaredAt(x, x1, y1, z1, x0, y0, z0);
  const t = x1 === x0 ? 0 : (x - x0) / (x1 - x0);
  const y = y0 + t * (y1 - y0);
  const z = z0 + t * (z1 - z0);
  return y * y + z * z;
}

/** The point of that part which is the farthest; only of an edge that has any. */
export function farthestOnEdge(
  x0: number,
  y0: number,
  z0: number,
  x1: number,
  y1: number,
  z1: number,
  from: number,
  to: number,
): readonly [x: number, y: number, z: number] {
  const [lo, hi] = x0 < x1 ? [x0, x1] : [x1, x0];
  const p = Math.max(lo, from);
  const q = Math.min(hi, to);
  const x = squaredAt(p, x0, y0, z0, x1, y1, z1) > squaredAt(q, x0, y0, z0, x1, y1, z1) ? p : q;
  const t = x1 === x0 ? 0 : (x - x0) / (x1 - x0);
  return [x, y0 + t * (y1 - y0), z0 + t * (z1 - z0)];
}
