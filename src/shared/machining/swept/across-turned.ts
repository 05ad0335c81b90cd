import type { Turned } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { type Reach, takeEven, takeExact, takePoint } from './reach.ts';

/** How closely the farthest point of a cone is closed in upon, mm. */
const CLOSE_MM = 1e-6;

/**
 * Turned about an axis square to the line, k away from it. The outline's circle of radius L at w along the axis (from the line's
 * plane across it) meets the plane at x, d = |x − x₀| from the axis, in s = √(L² − d²) to both sides of it, so that
 * r² = w² + (k + s)². Within a stretch s is greatest where d is least. Along a side of the outline L runs straight, and s, as a
 * function of w, bends downwards: it stays below each of its tangents T, w² + (k + T)² is greatest at an end, and halving the side again
 * and again closes in on the truth. Where k, d or the slope of L is nothing, the ends are exact at once.
 */
export function acrossTurned({ u, v, outline }: Turned, pose: Pose): Reach {
  const { ox, oy, oz, ux, uy, uz, vx, vy, vz, ay, az } = pose;
  const centre = ox + ux * u + vx * v;
  const [y, z] = [oy + uy * u + vy * v, oz + uz * u + vz * v];
  const base = y * ay + z * az;
  const m = z * ay - y * az;
  const side = m < 0 ? -1 : 1;
  const k = Math.abs(m);
  const points = outline.map(({ a, r }) => ({ w: base + a, r }));
  const widest = points.reduce((most, { r }) => Math.max(most, r), 0);
  const place = { w: 0, s: 0 };
  const breaks = [centre];
  for (const r of new Set(points.map((point) => point.r))) breaks.push(centre - r, centre + r);
  return {
    lo: centre - widest,
    hi: centre + widest,
    breaks,
    within(from, to, found) {
      const x = Math.min(Math.max(centre, from), to);
      const d = Math.abs(x - centre);
      const exact = farthestAt(points, k, d, found.floor, place);
      if (exact === undefined) return;
      const r = Math.sqrt(place.w * place.w + (k + place.s) * (k + place.s));
      const across = side * (k + place.s);
      const [atY, atZ] = [place.w * ay - across * az, place.w * az + across * ay];
      if (exact <= r) takeExact(found, r, x, atY, atZ);
      else {
        found.most = Math.max(found.most, exact);
        takePoint(found, r, x, atY, atZ);
      }
      const far = Math.max(Math.abs(from - centre), Math.abs(to - centre));
      if (far >= widest) return;
      // The corners of the outline alone: near enough for what only says where to cut finer.
      let least = 0;
      for (const { w, r: radius } of points) {
        if (radius < far) continue;
        const s = k + Math.sqrt(radius * radius - far * far);
        least = Math.max(least, w * w + s * s);
      }
      takeEven(found, Math.sqrt(least));
    },
  };
}

interface OutlinePoint {
  readonly w: number;
  readonly r: number;
}

/**
 * The greatest √(w² + (k + s)²) over the outline at d from the axis.
 *
 * @returns an upper bound, no less than the distance of the point that is put into `place`; undefined where all radii are less than d.
 */
function farthestAt(
  points: readonly OutlinePoint[],
  k: number,
  d: number,
  floor: number,
  place: { w: number; s: number },
): number | undefined {
  let [best, bound] = [-1, -1];
  const take = (w: number, s: number) => {
    const squared = w * w + (k + s) * (k + s);
    if (squared > best) {
      best = squared;
      place.w = w;
      place.s = s;
    }
  };
  const count = points.length;
  for (let i = 0; i < count; i++) {
    const { w, r } = points[i]!;
    if (r >= d) take(w, Math.sqrt(r * r - d * d));
    const next = points[i + 1 === count ? 0 : i + 1]!;
    // Where the side passes the radius d, the circle only just touches the plane.
    if (r >= d !== next.r >= d) take(w + ((next.w - w) * (d - r)) / (next.r - r), 0);
  }
  if (best < 0) return undefined;
  bound = best;
  if (k === 0 || d === 0) return Math.sqrt(bound);
  for (let i = 0; i < count; i++) {
    const one = points[i]!;
    const other = points[i + 1 === count ? 0 : i + 1]!;
    if (one.r === other.r || one.w === other.w || (one.r <= d && other.r <= d)) continue;
    bound = Math.max(
      bound,
      alongSide(one, other, k, d, Math.max(floor, 0), take, () => best),
    );
  }
  return Math.sqrt(Math.max(bound, best));
}

/** The same over one sloping side: a bound for r², and the points that it meets on its way. */
function alongSide(
  one: OutlinePoint,
  other: OutlinePoint,
  k: number,
  d: number,
  floor: number,
  take: (w: number, s: number) => void,
  best: () => number,
): number {
  const slope = (other.r - one.r) / (other.w - one.w);
  const cut = one.w + (d - one.r) / slope;
  const open: [number, number][] = [[one.r < d ? cut : one.w, other.r < d ? cut : other.w]];
  let bound = -1;
  for (let spent = 0; open.length > 0; spent++) {
    const [p, q] = open.pop()!;
    const middle = (p + q) / 2;
    const l = one.r + slope * (middle - one.w);
    const s = Math.sqrt(Math.max(l * l - d * d, 0));
    take(middle, s);
    const rise = s > 0 ? (((slope * l) / s) * (q - p)) / 2 : 0;
    const upper = Math.max(p * p + (k + s - rise) ** 2, q * q + (k + s + rise) ** 2);
    const reached = Math.max(Math.sqrt(best()) + CLOSE_MM, floor);
    if (upper <= reached * reached || s === 0 || spent > 400) bound = Math.max(bound, upper);
    else open.push([p, middle], [middle, q]);
  }
  return bound;
}
