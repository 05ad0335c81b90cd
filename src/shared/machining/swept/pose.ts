import { axesAcross } from '../../build/body-uses.ts';
import { type Axis, axes } from '../../build/station.ts';
import type { ExactShape, Move, Vec3 } from '../../solid/placed.ts';
import type { SweepLine } from './sweep-piece.ts';

/**
 * Where a shape stands as seen from the line: x along it, y and z the distances from it along the two axes across. A place
 * (u, v, a) of the shape's own (a along its axis; a mesh has X, Y, Z) lies at o + u · ⃗u + v · ⃗v + a · ⃗a.
 */
export interface Pose {
  readonly ox: number;
  readonly oy: number;
  readonly oz: number;
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
  readonly vx: number;
  readonly vy: number;
  readonly vz: number;
  readonly ax: number;
  readonly ay: number;
  readonly az: number;
}

/** Rounding in directions that are meant to be square: a picometre on a metre. */
const SQUARE = 1e-12;

const squared = (c: number): number => {
  if (Math.abs(c) < SQUARE) return 0;
  return Math.abs(Math.abs(c) - 1) < SQUARE ? Math.sign(c) : c;
};

const indexOf = (axis: Axis): number => axes.indexOf(axis);

/** The axes of the line's frame (along, first across, second across) as indices of X, Y, Z. */
export const frameOf = ({ axis }: SweepLine): readonly [number, number, number] => {
  const [first, second] = axesAcross(axis);
  return [indexOf(axis), indexOf(first), indexOf(second)];
};

export function poseOf(shape: ExactShape, move: Move, line: SweepLine): Pose {
  const [u, v, a] = shape.is === 'mesh' ? [0, 1, 2] : [...axesAcross(shape.axis).map(indexOf), indexOf(shape.axis)];
  const [x, y, z] = frameOf(line);
  const at = (row: number, column: number) => squared(move[4 * row + column]!);
  return {
    ox: move[4 * x + 3]!,
    oy: move[4 * y + 3]! - line.u,
    oz: move[4 * z + 3]! - line.v,
    ux: at(x, u!),
    uy: at(y, u!),
    uz: at(z, u!),
    vx: at(x, v!),
    vy: at(y, v!),
    vz: at(z, v!),
    ax: at(x, a!),
    ay: at(y, a!),
    az: at(z, a!),
  };
}

/** X, Y, Z of the first part of a place seen from the line. */
export function pointFrom(line: SweepLine, x: number, y: number, z: number): Vec3 {
  const point: [number, number, number] = [0, 0, 0];
  const [along, first, second] = frameOf(line);
  point[along] = x;
  point[first] = y + line.u;
  point[second] = z + line.v;
  return point;
}

/**
 * Whether the two poses of one shape sweep the same: one is the other turned about the line, or mirrored in a plane through
 * it. Such a move keeps places along the line and distances from it.
 */
export function sweepsTheSame(p: Pose, q: Pose): boolean {
  const near = 1e-9;
  const same = (a: number, b: number) => Math.abs(a - b) <= near;
  if (!same(p.ox, q.ox) || !same(p.ux, q.ux) || !same(p.vx, q.vx) || !same(p.ax, q.ax)) return false;
  // Seen along the line, origin and directions must lie equally far and equally apart: all products of pairs agree.
  const across = ({ oy, oz, uy, uz, vy, vz, ay, az }: Pose) => [oy, oz, uy, uz, vy, vz, ay, az];
  const [a, b] = [across(p), across(q)];
  for (let i = 0; i < 8; i += 2) {
    for (let j = i; j < 8; j += 2) {
      const first = a[i]! * a[j]! + a[i + 1]! * a[j + 1]!;
      const second = b[i]! * b[j]! + b[i + 1]! * b[j + 1]!;
      if (Math.abs(first - second) > near * (1 + Math.abs(first))) return false;
    }
  }
  return true;
}
