import { isOnArc, sidesOf } from '../../solid/outline.ts';
import type { Extrusion } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { away, type Reach, takeEven, takeExact } from './reach.ts';

/**
 * An outline drawn out along the line: r is the same from end to end, the distance to the farthest point of the outline.
 * Of a straight side that is one of its ends; of an arc (centre c, radius R) it is c + R · c / |c| where that lies on the arc,
 * |c| + R away, else one of its ends.
 */
export function alongExtrusion({ a0, a1, outline }: Extrusion, pose: Pose): Reach {
  const { ox, oy, oz, uy, uz, vy, vz, ax } = pose;
  let [most, y, z] = [-1, 0, 0];
  const take = (atY: number, atZ: number) => {
    const r = away(atY, atZ);
    if (r > most) [most, y, z] = [r, atY, atZ];
  };
  const yOf = (u: number, v: number) => oy + uy * u + vy * v;
  const zOf = (u: number, v: number) => oz + uz * u + vz * v;
  for (const { from, arc } of sidesOf(outline)) {
    take(yOf(from.u, from.v), zOf(from.u, from.v));
    if (!arc) continue;
    const [cy, cz] = [yOf(arc.centre.u, arc.centre.v), zOf(arc.centre.u, arc.centre.v)];
    const far = away(cy, cz);
    if (far === 0) continue;
    const [outU, outV] = [(uy * cy + uz * cz) / far, (vy * cy + vz * cz) / far];
    if (isOnArc(arc, Math.atan2(outV, outU))) take(cy + (arc.radius * cy) / far, cz + (arc.radius * cz) / far);
  }
  const [p, q] = [ox + ax * a0, ox + ax * a1];
  const [lo, hi] = [Math.min(p, q), Math.max(p, q)];
  return {
    lo,
    hi,
    breaks: [lo, hi],
    within(from, to, found) {
      takeExact(found, most, (Math.max(lo, from) + Math.min(hi, to)) / 2, y, z);
      if (lo <= from && to <= hi) takeEven(found, most);
    },
  };
}
