import { axesAcross } from '../../build/body-uses.ts';
import { axes } from '../../build/station.ts';
import { reachInDirection } from '../../solid/bounds.ts';
import type { Vec3 } from '../../solid/placed.ts';
import type { World, Worlds } from '../setups/world.ts';

/** Directions that are looked at about the line: every five degrees. The least of them is never less than the true least. */
const DIRECTIONS = 72;

/**
 * The direction across the line in which the work reaches least, as drawn: it is turned round on the table so that this side lies
 * towards the column.
 */
export function leastDirection({ drawn, adding, pieces }: Worlds): Vec3 {
  const [first, second] = axesAcross(drawn.line.axis).map((axis) => axes.indexOf(axis)) as [number, number];
  let [best, least]: [Vec3, number] = [[0, 0, 0], Infinity];
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const direction = [0, 0, 0];
    direction[first] = Math.cos(angle);
    direction[second] = Math.sin(angle);
    const most = reachTowards(drawn, { adding, pieces }, direction as unknown as Vec3);
    if (most < least) [best, least] = [direction as unknown as Vec3, most];
  }
  return best;
}

/** How far the work reaches from the line in a direction across it, mm. */
export function reachTowards(
  world: World,
  { adding, pieces }: Pick<Worlds, 'adding' | 'pieces'>,
  direction: Vec3,
): number {
  const { line } = world;
  const [first, second] = axesAcross(line.axis).map((axis) => axes.indexOf(axis)) as [number, number];
  const offset = direction[first]! * line.u + direction[second]! * line.v;
  let most = 0;
  for (const i of adding) {
    const { shape, moves } = world.shapeOf(i);
    const { grow } = pieces[i]!;
    for (const move of moves) most = Math.max(most, reachInDirection(shape, move, direction) + grow - offset);
  }
  return most;
}

/** How far the work reaches from the line along an axis across it, on the side where it reaches less; mm. */
export function leastReachAlong(world: World, { adding }: Worlds, which: 0 | 1): number {
  let [low, high] = [0, 0];
  for (const i of adding) {
    const faces = world.boxOf(i)?.across[which];
    if (!faces) continue;
    low = Math.min(low, faces[0]);
    high = Math.max(high, faces[1]);
  }
  return Math.min(-low, high);
}
