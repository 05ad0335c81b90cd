import { leastRadius } from '../setups/cuts.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { isTurning, latheWay } from './turning.ts';

/**
 * The cross slide carries the edge over a face, from its largest radius to its least.
 *
 *     margin = crossTravel − (radius of the face − least radius of the cut)
 */
export function askCrossTravel(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  return knownCuts(scene).flatMap((cut) => {
    const { operation, diameter } = cut;
    if (operation.process !== 'face' || latheWay(cut) !== 'outside') return [];
    const ask = asking(scene);
    const travel = ask.figure('crossTravel');
    if (!diameter) ask.miss({ is: 'field', field: 'cut/diameter' });
    return [
      ask.question('cross-travel', operation.id, 1, (world) => ({
        has: travel,
        needs: world.amount(diameter!) / 2 - (leastRadius(cut, world) ?? 0),
      })),
    ];
  });
}
