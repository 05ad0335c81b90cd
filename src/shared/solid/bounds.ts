import { unreachable } from '../base/assert.ts';
import { axesAcross } from '../build/body-uses.ts';
import { axes } from '../build/station.ts';
import { isOnArc, sidesOf } from './outline.ts';
import type { ExactShape, Extrusion, MeshShape, Move, PlacedBody, Turned, Vec3 } from './placed.ts';

export interface Bounds {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** The box that just holds a body and all its copies, in mm, arcs and turned faces included; undefined without a shape. */
export function boundsOf({ shape, moves }: Pick<PlacedBody, 'shape' | 'moves'>): Bounds | undefined {
  if (!shape || moves.length === 0) return undefined;
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (const move of moves) {
    const box = boundsOfCopy(shape, move);
    for (let k = 0; k < 3; k++) {
      min[k] = Math.min(min[k]!, box.min[k]!);
      max[k] = Math.max(max[k]!, box.max[k]!);
    }
  }
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 };
}

/** The box that just holds one copy. */
export function boundsOfCopy(shape: ExactShape, move: Move): Bounds {
  const min: number[] = [];
  const max: number[] = [];
  for (let row = 0; row < 12; row += 4) {
    const direction: Vec3 = [move[row]!, move[row + 1]!, move[row + 2]!];
    max.push(reach(shape, direction) + move[row + 3]!);
    min.push(-reach(shape, [-direction[0], -direction[1], -direction[2]]) + move[row + 3]!);
  }
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 };
}

/** The greatest of direction · point over all points of one copy of a shape. */
export function reachInDirection(shape: ExactShape, move: Move, [x, y, z]: Vec3): number {
  const own: Vec3 = [
    move[0] * x + move[4] * y + move[8] * z,
    move[1] * x + move[5] * y + move[9] * z,
    move[2] * x + move[6] * y + move[10] * z,
  ];
  return reach(shape, own) + move[3] * x + move[7] * y + move[11] * z;
}

/** How far the shape reaches in a direction: the greatest of direction · point over all its points. */
function reach(shape: ExactShape, direction: Vec3): number {
  switch (shape.is) {
    case 'extrusion':
      return reachOfExtrusion(shape, direction);
    case 'turned':
      return reachOfTurned(shape, direction);
    case 'mesh':
      return reachOfMesh(shape, direction);
    default:
      return unreachable(shape);
  }
}

/** The direction's members along the axis and along the two across it. */
function split(axis: Extrusion['axis'], direction: Vec3): Vec3 {
  const [u, v] = axesAcross(axis);
  return [direction[axes.indexOf(axis)]!, direction[axes.indexOf(u)]!, direction[axes.indexOf(v)]!];
}

function reachOfExtrusion({ axis, a0, a1, outline }: Extrusion, direction: Vec3): number {
  const [da, du, dv] = split(axis, direction);
  let most = -Infinity;
  const towards = Math.atan2(dv, du);
  const length = Math.hypot(du, dv);
  for (const { from, arc } of sidesOf(outline)) {
    most = Math.max(most, du * from.u + dv * from.v);
    if (arc && length > 0 && isOnArc(arc, towards)) {
      most = Math.max(most, du * arc.centre.u + dv * arc.centre.v + length * arc.radius);
    }
  }
  return most + Math.max(da * a0, da * a1);
}

function reachOfTurned({ axis, u, v, outline }: Turned, direction: Vec3): number {
  const [da, du, dv] = split(axis, direction);
  const length = Math.hypot(du, dv);
  let most = -Infinity;
  for (const { a, r } of outline) most = Math.max(most, da * a + length * r);
  return most + du * u + dv * v;
}

function reachOfMesh({ vertices, triangles }: MeshShape, [x, y, z]: Vec3): number {
  let most = -Infinity;
  for (const corner of triangles) {
    const at = corner * 3;
    most = Math.max(most, x * vertices[at]! + y * vertices[at + 1]! + z * vertices[at + 2]!);
  }
  return most;
}
