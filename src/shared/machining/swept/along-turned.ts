import type { Turned } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { away, type Reach, takeEven, takeExact } from './reach.ts';
import { SLIVER_MM } from './sweep-piece.ts';

/**
 * Turned about an axis parallel to the line, d away from it: r(x) = d + the greatest radius of its outline at x. Along a side of the
 * outline that runs straight, so it is greatest at an end of the side or of the stretch.
 */
export function alongTurned({ u, v, outline }: Turned, pose: Pose): Reach {
  const { ox, oy, oz, uy, uz, vy, vz, ax } = pose;
  const [y, z] = [oy + uy * u + vy * v, oz + uz * u + vz * v];
  const d = away(y, z);
  // The direction in which the farthest point lies; any for a coaxial one.
  const [outY, outZ] = d > 0 ? [y / d, z / d] : [1, 0];
  const sides: { readonly x0: number; readonly r0: number; readonly x1: number; readonly r1: number }[] = [];
  const breaks: number[] = [];
  outline.forEach((one, i) => {
    const other = outline[(i + 1) % outline.length]!;
    const [p, q] = [ox + ax * one.a, ox + ax * other.a];
    if (Math.abs(p - q) <= SLIVER_MM) return;
    sides.push(p < q ? { x0: p, r0: one.r, x1: q, r1: other.r } : { x0: q, r0: other.r, x1: p, r1: one.r });
    breaks.push(p, q);
  });
  return {
    lo: breaks.reduce((least, x) => Math.min(least, x), Infinity),
    hi: breaks.reduce((most, x) => Math.max(most, x), -Infinity),
    breaks,
    within(from, to, found) {
      let r = -1;
      let x = 0;
      let least = -1;
      for (const { x0, r0, x1, r1 } of sides) {
        if (x1 - from <= SLIVER_MM || to - x0 <= SLIVER_MM) continue;
        const slope = (r1 - r0) / (x1 - x0);
        const p = Math.max(x0, from);
        const q = Math.min(x1, to);
        const rp = x0 < from ? r0 + slope * (from - x0) : r0;
        const rq = x1 > to ? r0 + slope * (to - x0) : r1;
        if (rp > r) {
          r = rp;
          x = p;
        }
        if (rq > r) {
          r = rq;
          x = q;
        }
        if (p - from < SLIVER_MM && to - q < SLIVER_MM) least = Math.max(least, Math.min(rp, rq));
      }
      if (r < 0) return;
      takeExact(found, d + r, x, (d + r) * outY, (d + r) * outZ);
      if (least >= 0) takeEven(found, d + least);
    },
  };
}
