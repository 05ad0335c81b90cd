import { frameOf } from './mesh/body-mesh.ts';
import { type Side, sidesOf } from './outline.ts';
import type { ExactShape, Move, OutlineCorner, Vec3 } from './placed.ts';

/** A point this near to a surface may be on either side of it, mm. */
const NEAR_MM = 1e-6;

/** Whether the copy of a shape may hold the point (X, Y, Z of the part), its surface included. */
export type Holds = (point: Vec3) => boolean;

/** Exact but for a nanometre at the surface; of a mesh, whether the box about it holds the point. */
export function createHolder(shape: ExactShape, move: Move): Holds {
  const holds = inPlace(shape);
  const frame = shape.is === 'mesh' ? { u: 0, v: 1, a: 2 } : frameOf(shape.axis);
  const [ox, oy, oz] = [move[3], move[7], move[11]];
  return (point) => {
    // A move turns and mirrors only: its columns are the shape's own axes.
    const [x, y, z] = [point[0] - ox, point[1] - oy, point[2] - oz];
    const own = (k: number) => move[k]! * x + move[4 + k]! * y + move[8 + k]! * z;
    return holds(own(frame.u), own(frame.v), own(frame.a));
  };
}

function inPlace(shape: ExactShape): (u: number, v: number, a: number) => boolean {
  if (shape.is === 'mesh') {
    const [low, high] = boxOf(shape.vertices);
    return (u, v, a) => [u, v, a].every((at, k) => at >= low[k]! - NEAR_MM && at <= high[k]! + NEAR_MM);
  }
  if (shape.is === 'extrusion') {
    const { a0, a1, outline } = shape;
    const sides = sidesOf(outline);
    return (u, v, a) => a >= a0 - NEAR_MM && a <= a1 + NEAR_MM && isWithin(sides, u, v);
  }
  const sides = sidesOf(shape.outline.map(({ a, r }): OutlineCorner => ({ u: a, v: r, bulge: 0 })));
  return (u, v, a) => isWithin(sides, a, Math.sqrt((u - shape.u) ** 2 + (v - shape.v) ** 2));
}

function boxOf(vertices: Float64Array): readonly [readonly number[], readonly number[]] {
  const [low, high] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  vertices.forEach((at, i) => {
    low[i % 3] = Math.min(low[i % 3]!, at);
    high[i % 3] = Math.max(high[i % 3]!, at);
  });
  return [low, high];
}

/** Whether the point lies within the closed outline of these sides, or on it. */
function isWithin(sides: readonly Side[], u: number, v: number): boolean {
  let inside = false;
  for (const side of sides) {
    const { from, to, arc } = side;
    if (isNearSide(side, u, v)) return true;
    // Within the polygon of the corners by counting the sides that a ray towards +u meets; each arc turns the answer within
    // what lies between it and its chord.
    if (from.v > v !== to.v > v && u < from.u + ((to.u - from.u) * (v - from.v)) / (to.v - from.v)) inside = !inside;
    if (arc && isBeyondChord(side, u, v) && squared(u - arc.centre.u, v - arc.centre.v) < arc.radius * arc.radius) {
      inside = !inside;
    }
  }
  return inside;
}

const squared = (u: number, v: number): number => u * u + v * v;

/** Whether the point lies on that side of an arc's chord on which the arc does: to the right of one that turns to the left. */
function isBeyondChord({ from, to, bulge }: Side, u: number, v: number): boolean {
  const left = (to.u - from.u) * (v - from.v) - (to.v - from.v) * (u - from.u);
  return bulge > 0 ? left < 0 : left > 0;
}

function isNearSide(side: Side, u: number, v: number): boolean {
  const { from, to, arc } = side;
  const [du, dv] = [u - from.u, v - from.v];
  if (squared(du, dv) <= NEAR_MM * NEAR_MM) return true;
  if (arc) {
    const off = Math.sqrt(squared(u - arc.centre.u, v - arc.centre.v)) - arc.radius;
    return Math.abs(off) <= NEAR_MM && isBeyondChord(side, u, v);
  }
  const [su, sv] = [to.u - from.u, to.v - from.v];
  const off = du * sv - dv * su;
  const length = squared(su, sv);
  if (off * off > NEAR_MM * NEAR_MM * length) return false;
  const along = du * su + dv * sv;
  return along >= 0 && along <= length;
}
