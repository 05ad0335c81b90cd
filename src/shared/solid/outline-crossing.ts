import { isOnArc, type Point, SAME_MM, type Side, sidesOf } from './outline.ts';
import type { OutlineCorner } from './placed.ts';

/** Around a shared corner, where two sides always meet: a second meeting counts only beyond this part of their size. */
const NEAR_CORNER = 1e-4;

/**
 * @returns the first two sides, by index, that cross or touch one another elsewhere than at the corner they share, or that
 *   lie on one another; undefined when the outline encloses one piece cleanly.
 */
export function findCrossing(outline: readonly OutlineCorner[]): readonly [number, number] | undefined {
  const sides = sidesOf(outline);
  const boxes = sides.map(boxOf);
  const count = sides.length;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (!boxesMeet(boxes[i]!, boxes[j]!)) continue;
      if (meet(sides[i]!, sides[j]!, j === i + 1, i === 0 && j === count - 1)) return [i, j];
    }
  }
  return undefined;
}

type Box = readonly [u0: number, v0: number, u1: number, v1: number];

function boxOf({ from, to, arc }: Side): Box {
  if (!arc) return [Math.min(from.u, to.u), Math.min(from.v, to.v), Math.max(from.u, to.u), Math.max(from.v, to.v)];
  const { centre, radius } = arc;
  return [centre.u - radius, centre.v - radius, centre.u + radius, centre.v + radius];
}

const boxesMeet = (a: Box, b: Box): boolean =>
  a[0] <= b[2] + SAME_MM && b[0] <= a[2] + SAME_MM && a[1] <= b[3] + SAME_MM && b[1] <= a[3] + SAME_MM;

/** @param onward b begins where a ends. @param around a begins where b ends. */
function meet(a: Side, b: Side, onward: boolean, around: boolean): boolean {
  const shared = [...(onward ? [a.to] : []), ...(around ? [a.from] : [])];
  if (!a.arc && !b.arc && shared.length === 1) return doublesBack(a, b, shared[0]!);
  const size = Math.max(span(a), span(b));
  const elsewhere = (point: Point) =>
    shared.every(
      (corner) => Math.hypot(point.u - corner.u, point.v - corner.v) > Math.max(SAME_MM, NEAR_CORNER * size),
    );
  return meetings(a, b).some(elsewhere);
}

const span = ({ from, to, arc }: Side): number => (arc ? 2 * arc.radius : Math.hypot(to.u - from.u, to.v - from.v));

/** Two straight sides that share a corner meet again only when the second runs back along the first. */
function doublesBack(a: Side, b: Side, corner: Point): boolean {
  const one = a.from === corner || same(a.from, corner) ? a.to : a.from;
  const other = same(b.from, corner) ? b.to : b.from;
  const au = one.u - corner.u;
  const av = one.v - corner.v;
  const bu = other.u - corner.u;
  const bv = other.v - corner.v;
  const shorter = Math.min(Math.hypot(au, av), Math.hypot(bu, bv));
  const apart = Math.abs(au * bv - av * bu) / Math.max(Math.hypot(au, av), Math.hypot(bu, bv));
  return au * bu + av * bv > 0 && apart <= Math.min(SAME_MM, shorter);
}

const same = (a: Point, b: Point): boolean => Math.hypot(a.u - b.u, a.v - b.v) <= SAME_MM;

/** Points that lie on both sides. Of sides that lie on one another, some of those points. */
function meetings(a: Side, b: Side): readonly Point[] {
  const found: Point[] = [];
  for (const point of [a.from, a.to]) if (isOn(b, point)) found.push(point);
  for (const point of [b.from, b.to]) if (isOn(a, point)) found.push(point);
  if (a.arc && b.arc) found.push(...arcsMeet(a, b));
  else if (a.arc) found.push(...lineMeetsArc(b, a));
  else if (b.arc) found.push(...lineMeetsArc(a, b));
  else found.push(...linesMeet(a, b));
  return found;
}

function isOn({ from, to, arc }: Side, { u, v }: Point): boolean {
  if (arc) {
    const du = u - arc.centre.u;
    const dv = v - arc.centre.v;
    if (Math.abs(Math.hypot(du, dv) - arc.radius) > SAME_MM) return false;
    return isOnArc(arc, Math.atan2(dv, du), SAME_MM / arc.radius);
  }
  const du = to.u - from.u;
  const dv = to.v - from.v;
  const along = ((u - from.u) * du + (v - from.v) * dv) / (du * du + dv * dv);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(u - from.u - t * du, v - from.v - t * dv) <= SAME_MM;
}

function linesMeet(a: Side, b: Side): readonly Point[] {
  const au = a.to.u - a.from.u;
  const av = a.to.v - a.from.v;
  const bu = b.to.u - b.from.u;
  const bv = b.to.v - b.from.v;
  const cross = au * bv - av * bu;
  // Parallel ones that lie on one another are found by their ends.
  if (cross === 0) return [];
  const du = b.from.u - a.from.u;
  const dv = b.from.v - a.from.v;
  const t = (du * bv - dv * bu) / cross;
  const s = (du * av - dv * au) / cross;
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? [{ u: a.from.u + t * au, v: a.from.v + t * av }] : [];
}

function lineMeetsArc(line: Side, side: Side): readonly Point[] {
  const { centre, radius } = side.arc!;
  const du = line.to.u - line.from.u;
  const dv = line.to.v - line.from.v;
  const squared = du * du + dv * dv;
  const foot = ((centre.u - line.from.u) * du + (centre.v - line.from.v) * dv) / squared;
  const away = Math.hypot(line.from.u + foot * du - centre.u, line.from.v + foot * dv - centre.v);
  if (away > radius + SAME_MM) return [];
  const half = Math.sqrt(Math.max(0, radius * radius - away * away) / squared);
  return [foot - half, foot + half]
    .filter((t) => t >= 0 && t <= 1)
    .map((t) => ({ u: line.from.u + t * du, v: line.from.v + t * dv }))
    .filter((point) => isOnArc(side.arc!, Math.atan2(point.v - centre.v, point.u - centre.u)));
}

function arcsMeet(a: Side, b: Side): readonly Point[] {
  const one = a.arc!;
  const other = b.arc!;
  const du = other.centre.u - one.centre.u;
  const dv = other.centre.v - one.centre.v;
  const apart = Math.hypot(du, dv);
  // On one circle they can only overlap, and that is found by their ends.
  if (apart <= SAME_MM) return [];
  if (apart > one.radius + other.radius + SAME_MM || apart < Math.abs(one.radius - other.radius) - SAME_MM) return [];
  const along = (apart * apart + one.radius * one.radius - other.radius * other.radius) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, one.radius * one.radius - along * along));
  return [-aside, aside]
    .map((h) => ({
      u: one.centre.u + (along * du - h * dv) / apart,
      v: one.centre.v + (along * dv + h * du) / apart,
    }))
    .filter((point) =>
      [one, other].every((arc) => isOnArc(arc, Math.atan2(point.v - arc.centre.v, point.u - arc.centre.u))),
    );
}
