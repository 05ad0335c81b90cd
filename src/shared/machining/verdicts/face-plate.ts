import { SEAT_DEPTH_MM } from '../practice.ts';
import { latheStand, stretchBetween } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import { atMostOf, farthestTerm } from './farthest-term.ts';
import type { Question } from './question.ts';
import { isTurning } from './turning.ts';

/**
 * What sits against the face plate should lie on it all over.
 *
 *     margin = facePlateDiameter / 2 − greatest radius of the work at its seat
 */
export function askFacePlate(scene: Scene): readonly Question[] {
  const { holding } = scene.setup;
  if (!isTurning(scene) || holding.as !== 'face plate') return [];
  const ask = asking(scene);
  const radius = ask.figure('facePlateDiameter') / 2;
  const seat = ask.place(holding.seat, 'holding/seat');
  const { sense } = latheStand(scene);
  const pieces = scene.worlds.adding;
  return [
    ask.question(
      'face-plate',
      undefined,
      pieces.length,
      (world, i) => {
        const at = world.place(seat);
        return farthestTerm(world, pieces[i]!, stretchBetween(at, at + sense * SEAT_DEPTH_MM), radius);
      },
      atMostOf(scene, radius),
    ),
  ];
}
