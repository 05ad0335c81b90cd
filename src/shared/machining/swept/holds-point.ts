import { type Arc, sidesOf } from '../../solid/outline.ts';
import type { ExactShape, Extrusion, Move, OutlineCorner, Turned, Vec3 } from '../../solid/placed.ts';
import { poseOf } from './pose.ts';

/** A point this near to a surface may be on either side of it, mm. */
const NEAR_MM = 1e-6;

/** Whether the copy of the shape may hold the point (X, Y, Z of the part), its surface included; of a mesh, whether its box does. */
export function mayHold(shape: ExactShape, move: Move, point: Vec3): boolean {
  // Seen from the X axis through the datum, the pose is the move itself; its inverse brings the point to the shape.
  const { ox, oy, oz, ux, uy, uz, vx, vy, vz, ax, ay, az } = poseOf(shape, move, { axis: 'X', u: 0, v: 0 });
  const [x, y, z] = [point[0] - ox, point[1] - oy, point[2] - oz];
  const [u, v, a] = [ux * x + uy * y + uz * z, vx * x + vy * y + vz * z, ax * x + ay * y + az * z];
  if (shape.is === 'extrusion') return inExtrusion(shape, u, v, a);
  if (shape.is === 'turned') return inTurned(shape, u, v, a);
  let [inside, at] = [true, [u, v, a]];
  for (let k = 0; k < 3 && inside; k++) {
    let [least, most] = [Infinity, -Infinity];
    for (let i = k; i < shape.vertices.length; i += 3) {
      least = Math.min(least, shape.vertices[i]!);
      most = Math.max(most, shape.vertices[i]!);
    }
    inside = at[k]! >= least - NEAR_MM && at[k]! <= most + NEAR_MM;
  }
  return inside;
}

const inExtrusion = ({ a0, a1, outline }: Extrusion, u: number, v: number, a: number): boolean =>
  a >= a0 - NEAR_MM && a <= a1 + NEAR_MM && inOutline(outline, u, v);

function inTurned({ u, v, outline }: Turned, pu: number, pv: number, a: number): boolean {
  const r = Math.hypot(pu - u, pv - v);
  return inOutline(
    outline.map((point) => ({ u: point.a, v: point.r, bulge: 0 })),
    a,
    r,
  );
}

/** Whether the point lies within the outline or on it. */
export function inOutline(outline: readonly OutlineCorner[], u: number, v: number): boolean {
  let inside = false;
  for (const { from, to, arc } of sidesOf(outline)) {
    if (isNearSide(from, to, arc, u, v)) return true;
    // Within the polygon of the corners by counting the sides that a ray towards +u meets; each arc turns the answer within
    // what lies between it and its chord.
    if (from.v > v !== to.v > v && u < from.u + ((to.u - from.u) * (v - from.v)) / (to.v - from.v)) inside = !inside;
    if (arc && isInSegment(from, to, arc, u, v)) inside = !inside;
  }
  return inside;
}

interface At {
  readonly u: number;
  readonly v: number;
}

function isInSegment(from: At, to: At, { centre, radius, sweep }: Arc, u: number, v: number): boolean {
  if (Math.hypot(u - centre.u, v - centre.v) >= radius) return false;
  const side = (to.u - from.u) * (v - from.v) - (to.v - from.v) * (u - from.u);
  // An arc that turns to the left lies to the right of its chord.
  return sweep > 0 ? side < 0 : side > 0;
}

function isNearSide(from: At, to: At, arc: Arc | undefined, u: number, v: number): boolean {
  if (Math.hypot(u - from.u, v - from.v) <= NEAR_MM) return true;
  if (arc) {
    if (Math.abs(Math.hypot(u - arc.centre.u, v - arc.centre.v) - arc.radius) > NEAR_MM) return false;
    const side = (to.u - from.u) * (v - from.v) - (to.v - from.v) * (u - from.u);
    return arc.sweep > 0 ? side <= 0 : side >= 0;
  }
  const length = Math.hypot(to.u - from.u, to.v - from.v);
  const t = ((u - from.u) * (to.u - from.u) + (v - from.v) * (to.v - from.v)) / (length * length);
  if (!(t >= 0 && t <= 1)) return false;
  const off = (u - from.u) * (to.v - from.v) - (v - from.v) * (to.u - from.u);
  return Math.abs(off) <= NEAR_MM * length;
}
