import { axesAcross } from '../build/body-uses.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Move, Vec3 } from './placed.ts';

export const STAY: Move = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0];

const indexOf = (axis: Axis): 0 | 1 | 2 => axes.indexOf(axis) as 0 | 1 | 2;

/** The point that a move brings `point` to. */
export const moved = (move: Move, [x, y, z]: Vec3): Vec3 => [
  move[0] * x + move[1] * y + move[2] * z + move[3],
  move[4] * x + move[5] * y + move[6] * z + move[7],
  move[8] * x + move[9] * y + move[10] * z + move[11],
];

/** First `first`, then `then`, as one move. */
export function compose(then: Move, first: Move): Move {
  const to: number[] = [];
  for (let row = 0; row < 12; row += 4) {
    for (let column = 0; column < 4; column++) {
      const sum =
        then[row]! * first[column]! + then[row + 1]! * first[4 + column]! + then[row + 2]! * first[8 + column]!;
      to.push(column === 3 ? sum + then[row + 3]! : sum);
    }
  }
  return to as unknown as Move;
}

/** −1 for a mirror image, 1 for a turn. */
export const handOf = (m: Move): 1 | -1 =>
  m[0] * (m[5] * m[10] - m[6] * m[9]) - m[1] * (m[4] * m[10] - m[6] * m[8]) + m[2] * (m[4] * m[9] - m[5] * m[8]) < 0
    ? -1
    : 1;

export function shiftAlong(axis: Axis, mm: number): Move {
  const move = [...STAY];
  move[4 * indexOf(axis) + 3] = mm;
  return move as unknown as Move;
}

/** The mirror image about the plane across `axis` at `at` mm. */
export function mirrorAbout(axis: Axis, at: number): Move {
  const row = indexOf(axis);
  const move = [...STAY];
  move[4 * row + row] = -1;
  move[4 * row + 3] = 2 * at;
  return move as unknown as Move;
}

/** A turn by `degrees` about the line along `axis` through (u, v), from the first of the axes across towards the second. */
export function turnAbout(axis: Axis, u: number, v: number, degrees: number): Move {
  const [first, second] = axesAcross(axis).map(indexOf) as [number, number];
  const cos = cosDeg(degrees);
  const sin = sinDeg(degrees);
  const move = [...STAY];
  move[4 * first + first] = cos;
  move[4 * first + second] = -sin;
  move[4 * second + first] = sin;
  move[4 * second + second] = cos;
  move[4 * first + 3] = u - cos * u + sin * v;
  move[4 * second + 3] = v - sin * u - cos * v;
  return move as unknown as Move;
}

/** Sine of an angle in degrees; exact at every multiple of 30° that has an exact value, which bolt circles are full of. */
export function sinDeg(degrees: number): number {
  const turned = degrees % 360;
  const angle = turned < 0 ? turned + 360 : turned;
  if (angle > 180) return -sinDeg(angle - 180) + 0;
  const folded = angle > 90 ? 180 - angle : angle;
  if (folded === 0) return 0;
  if (folded === 30) return 0.5;
  if (folded === 90) return 1;
  return Math.sin((folded * Math.PI) / 180);
}

/** Cosine of an angle in degrees, exact where the sine is. */
export const cosDeg = (degrees: number): number => sinDeg(degrees + 90);
