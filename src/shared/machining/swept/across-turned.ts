import type { Turned } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { type Reach, takeEven, takePoint } from './reach.ts';

/** How closely the farthest point of a cone is closed in upon, mm. */
const CLOSE_MM = 1e-6;
/** Pieces that a side is cut into at the most for one stretch. */
const MOST_CUTS = 400;

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
  const aside = z * ay - y * az;
  const side = aside < 0 ? -1 : 1;
  const k = Math.abs(aside);
  const points = outline.map(({ a, r }) => ({ w: base + a, r }));
  const widest = points.reduce((most, { r }) => Math.max(most, r), 0);
  const spot: Spot = { w: 0, s: 0, squared: -1 };
  const breaks = [centre];
  for (const r of new Set(points.map((point) => point.r))) breaks.push(centre - r, centre + r);
  return {
    lo: centre - widest,
    hi: centre + widest,
    breaks,
    within(from, to, found) {
      const x = Math.min(Math.max(centre, from), to);
      const d = Math.abs(x - centre);
      const bound = farthestAt(points, k, d, found.floor, spot);
      if (bound < 0) return;
      const m = side * (k + spot.s);
      const most = Math.sqrt(bound);
      if (most > found.most) found.most = most;
      takePoint(found, Math.sqrt(spot.squared), x, spot.w * ay - m * az, spot.w * az + m * ay);
      const far = Math.max(Math.abs(from - centre), Math.abs(to - centre));
      if (far >= widest) return;
      // The corners of the outline alone: near enough for what only says where to cut finer.
      let least = 0;
      for (const { w, r: radius } of points) {
        if (radius < far) continue;
        const s = k + Math.sqrt(radius * radius - far * far);
        if (w * w + s * s > least) least = w * w + s * s;
      }
      takeEven(found, Math.sqrt(least));
    },
  };
}

interface OutlinePoint {
  readonly w: number;
  readonly r: number;
}

/** The farthest point that was met so far. */
interface Spot {
  w: number;
  s: number;
  /** w² + (k + s)²; −1 before there is any. */
  squared: number;
}

function meet(spot: Spot, k: number, w: number, s: number): void {
  const squared = w * w + (k + s) * (k + s);
  if (squared <= spot.squared) return;
  spot.squared = squared;
  spot.w = w;
  spot.s = s;
}

/**
 * The greatest w² + (k + s)² over the outline at d from the axis: an upper bound, no less than that of the `spot` that it finds.
 * −1 where all radii are less than d.
 */
function farthestAt(points: readonly OutlinePoint[], k: number, d: number, floor: number, spot: Spot): number {
  const count = points.length;
  spot.squared = -1;
  for (let i = 0; i < count; i++) {
    const { w, r } = points[i]!;
    if (r >= d) meet(spot, k, w, Math.sqrt(r * r - d * d));
    const next = points[i + 1 === count ? 0 : i + 1]!;
    // Where the side passes the radius d, the circle only just touches the plane.
    if (r >= d !== next.r >= d) meet(spot, k, w + ((next.w - w) * (d - r)) / (next.r - r), 0);
  }
  let bound = spot.squared;
  if (bound < 0 || k === 0 || d === 0) return bound;
  for (let i = 0; i < count; i++) {
    const one = points[i]!;
    const other = points[i + 1 === count ? 0 : i + 1]!;
    if (one.r === other.r || one.w === other.w || (one.r <= d && other.r <= d)) continue;
    bound = Math.max(bound, alongSide(one, other, k, d, floor, spot));
  }
  return Math.max(bound, spot.squared);
}

/** The same over one sloping side. */
function alongSide(one: OutlinePoint, other: OutlinePoint, k: number, d: number, floor: number, spot: Spot): number {
  const slope = (other.r - one.r) / (other.w - one.w);
  const cut = one.w + (d - one.r) / slope;
  // Both ends of what is still to be looked at, one after another.
  const open = [one.r < d ? cut : one.w, other.r < d ? cut : other.w];
  let bound = -1;
  for (let spent = 0; open.length > 0; spent++) {
    const q = open.pop()!;
    const p = open.pop()!;
    const middle = (p + q) / 2;
    const l = one.r + slope * (middle - one.w);
    const s = Math.sqrt(Math.max(l * l - d * d, 0));
    meet(spot, k, middle, s);
    const rise = s > 0 ? (((slope * l) / s) * (q - p)) / 2 : 0;
    const upper = Math.max(p * p + (k + s - rise) ** 2, q * q + (k + s + rise) ** 2);
    const reached = Math.max(Math.sqrt(spot.squared) + CLOSE_MM, floor);
    if (upper <= reached * reached || s === 0 || spent > MOST_CUTS) bound = Math.max(bound, upper);
    else open.push(p, middle, middle, q);
  }
  return bound;
}
