import { axesAcross } from '../../build/body-uses.ts';
import { axes } from '../../build/station.ts';
import { reachInDirection } from '../../solid/bounds.ts';
import type { Vec3 } from '../../solid/placed.ts';
import type { World, Worlds } from '../setups/world.ts';

/** Directions that are looked at about the line: every five degrees. The least of them is never less than the true least. */
const DIRECTIONS = 72;

/**
 * How far the work reaches from the line on the side where it reaches least: what must find room before a column, when the work may
 * be turned about the line. mm.
 */
export function leastReachAcross(world: World, { adding, pieces }: Worlds): number {
  const { line } = world;
  const [first, second] = axesAcross(line.axis).map((axis) => axes.indexOf(axis)) as [number, number];
  let least = Infinity;
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const direction = [0, 0, 0];
    direction[first] = Math.cos(angle);
    direction[second] = Math.sin(angle);
    const offset = direction[first]! * line.u + direction[second]! * line.v;
    let most = -Infinity;
    for (const i of adding) {
      const { shape, moves } = world.shapeOf(i);
      const { grow } = pieces[i]!;
      for (const move of moves)
        most = Math.max(most, reachInDirection(shape, move, direction as unknown as Vec3) + grow - offset);
    }
    least = Math.min(least, most);
  }
  return Math.max(0, least);
}

/** How far the work reaches from the line along an axis across it, on the side where it reaches less; mm. */
export function leastReachAlong(world: World, { adding }: Worlds, which: 0 | 1): number {
  let [low, high] = [0, 0];
  for (const i of adding) {
    const faces = world.boxOf(i)?.across[which];
    if (!faces) continue;
    low = Math.min(low, faces[0].at);
    high = Math.max(high, faces[1].at);
  }
  return Math.min(-low, high);
}
