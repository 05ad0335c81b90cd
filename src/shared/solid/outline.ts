import type { OutlineCorner } from './placed.ts';

/** Places nearer than this are one place, in mm: a nanometre, far below what any drawing says and far above rounding. */
export const SAME_MM = 1e-6;

export interface Point {
  readonly u: number;
  readonly v: number;
}

/** One side of an outline: straight, or an arc about `centre`. */
export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  /** Of an arc alone. */
  readonly arc: Arc | undefined;
}

export interface Arc {
  readonly centre: Point;
  readonly radius: number;
  /** Direction of `from` seen from the centre, in radians. */
  readonly start: number;
  /** Signed: positive when the arc turns to the left. */
  readonly sweep: number;
}

/** The sides of a closed outline in order; side i leaves corner i. */
export function sidesOf(outline: readonly OutlineCorner[]): readonly Side[] {
  return outline.map((corner, i) => {
    const to = outline[(i + 1) % outline.length]!;
    return {
      from: corner,
      to,
      bulge: corner.bulge,
      arc: corner.bulge === 0 ? undefined : arcOf(corner, to, corner.bulge),
    };
  });
}

/** The arc of a bulge between two points. */
export function arcOf(from: Point, to: Point, bulge: number): Arc {
  const du = to.u - from.u;
  const dv = to.v - from.v;
  const chord = Math.hypot(du, dv);
  // With b = tan(sweep / 4): radius = c (1 + b²) / 4 |b|, centre c (1 − b²) / 4 b to the left of the chord's middle.
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const aside = (1 - bulge * bulge) / (4 * bulge);
  const centre = { u: (from.u + to.u) / 2 - dv * aside, v: (from.v + to.v) / 2 + du * aside };
  const start = Math.atan2(from.v - centre.v, from.u - centre.u);
  return { centre, radius, start, sweep: 4 * Math.atan(bulge) };
}

/** Whether the direction (radians, from the centre) lies on the arc, its ends included. */
export function isOnArc({ start, sweep }: Pick<Arc, 'start' | 'sweep'>, direction: number, slack = 0): boolean {
  const full = 2 * Math.PI;
  const along = sweep > 0 ? direction - start : start - direction;
  const turned = ((along % full) + full) % full;
  return turned <= Math.abs(sweep) + slack || turned >= full - slack;
}

/** Area within the polygon of the points: positive when they run counter-clockwise. */
export function polygonArea(points: readonly Point[]): number {
  const origin = points[0];
  if (!origin) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const a = points[i]!;
    const b = points[i + 1]!;
    twice += (a.u - origin.u) * (b.v - origin.v) - (b.u - origin.u) * (a.v - origin.v);
  }
  return twice / 2;
}

/** Area within an outline, arcs and all: the polygon of its corners and a circular segment for each arc. */
export function outlineArea(outline: readonly OutlineCorner[]): number {
  let area = polygonArea(outline);
  for (const { arc } of sidesOf(outline)) {
    if (arc) area += (arc.radius * arc.radius * (arc.sweep - Math.sin(arc.sweep))) / 2;
  }
  return area;
}

/** Length of an outline in mm. */
export const outlineLength = (outline: readonly OutlineCorner[]): number =>
  sidesOf(outline).reduce(
    (sum, { from, to, arc }) =>
      sum + (arc ? arc.radius * Math.abs(arc.sweep) : Math.hypot(to.u - from.u, to.v - from.v)),
    0,
  );

/** A corner to be rounded: 0 leaves it sharp. */
export interface Rounded extends Point {
  readonly radius: number;
}

/**
 * The counter-clockwise outline of a polygon whose corners are rounded.
 * @returns `zero` with the corners that lie on one another, or `radius` with the corners whose roundings do not fit on the
 *   side between them; indices are into `corners`.
 */
export function roundCorners(
  corners: readonly Rounded[],
):
  | { readonly outline: readonly OutlineCorner[] }
  | { readonly why: 'zero' | 'radius'; readonly at: readonly number[] } {
  const count = corners.length;
  const order = corners.map((_, i) => i);
  if (polygonArea(corners) < 0) order.reverse();
  const ring = order.map((i) => corners[i]!);
  const at = (i: number) => ring[(i + count) % count]!;
  const lengths = ring.map((corner, i) => Math.hypot(at(i + 1).u - corner.u, at(i + 1).v - corner.v));
  const short = lengths.findIndex((length) => length <= SAME_MM);
  if (short >= 0) return { why: 'zero', at: [order[short]!, order[(short + 1) % count]!] };
  const halfTurns = ring.map((corner, i) => halfTurnAt(at(i - 1), corner, at(i + 1)));
  // The length that a rounding takes of each side that meets at its corner.
  const cuts = ring.map(({ radius }, i) => (radius === 0 ? 0 : radius * Math.abs(halfTurns[i]!)));
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    if (cuts[i]! + cuts[next]! <= lengths[i]! + SAME_MM) continue;
    const guilty = [i, next].filter((corner) => cuts[corner]! > 0);
    return { why: 'radius', at: guilty.map((corner) => order[corner]!) };
  }
  const outline: OutlineCorner[] = [];
  const put = (u: number, v: number, bulge: number) => {
    const last = outline.at(-1);
    // Where two roundings use up a side, the end of one is the beginning of the other.
    if (last && last.bulge === 0 && Math.hypot(last.u - u, last.v - v) <= SAME_MM) outline.pop();
    outline.push({ u, v, bulge });
  };
  for (let i = 0; i < count; i++) {
    const corner = ring[i]!;
    const cut = cuts[i]!;
    if (cut <= SAME_MM) {
      put(corner.u, corner.v, 0);
      continue;
    }
    const before = at(i - 1);
    const after = at(i + 1);
    const back = cut / lengths[(i - 1 + count) % count]!;
    const on = cut / lengths[i]!;
    const half = halfTurns[i]!;
    const bulge = half / (1 + Math.hypot(1, half));
    put(corner.u + (before.u - corner.u) * back, corner.v + (before.v - corner.v) * back, bulge);
    put(corner.u + (after.u - corner.u) * on, corner.v + (after.v - corner.v) * on, 0);
  }
  const [first] = outline;
  const last = outline.at(-1);
  if (first && last && last.bulge === 0 && Math.hypot(last.u - first.u, last.v - first.v) <= SAME_MM) outline.pop();
  return { outline };
}

/**
 * The tangent of half the angle by which the way turns at a corner, positive to the left: sin / (1 + cos), which is exactly 1
 * at the square corners that most outlines have.
 */
function halfTurnAt(before: Point, corner: Point, after: Point): number {
  const au = corner.u - before.u;
  const av = corner.v - before.v;
  const bu = after.u - corner.u;
  const bv = after.v - corner.v;
  const onward = Math.hypot(au, av) * Math.hypot(bu, bv) + au * bu + av * bv;
  return onward <= 0 ? Infinity : (au * bv - av * bu) / onward;
}
