import { FREE_PER_GRIP, FREE_PER_GRIP_CENTRED } from '../practice.ts';
import { chuckKeys, endOf, latheStand, stretchBetween } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import { atMostOf, farthestTerm } from './farthest-term.ts';
import type { Question } from './question.ts';
import { isTurning } from './turning.ts';

/**
 * Held in a chuck.
 *
 * - jaw-range: the diameter that is gripped lies between the least and the most that the jaws take, from without or in a bore; the worse of the
 *   two is told.
 * - grip-length: length gripped (no more than the jaws are deep) against the length that stands free of them over 3, or over 10 with a centre in the
 *   far end (common practice, no source).
 * - through-spindle: what reaches back behind the jaws passes into the bore of the spindle.
 */
export function askJaws(scene: Scene): readonly Question[] {
  const { holding } = scene.setup;
  if (!isTurning(scene) || (holding.as !== 'three-jaw chuck' && holding.as !== 'four-jaw chuck')) return [];
  const stand = latheStand(scene);
  const { sense, grip } = stand;
  const keys = chuckKeys[holding.as];

  const range = asking(scene);
  const [least, most] = (holding.inside ? keys.inside : keys.outside).map((key) => range.figure(key)) as [
    number,
    number,
  ];
  const diameter = range.amount(holding.diameter, ['diameter', 'width'], 'holding/diameter');
  const questions = [
    range.question('jaw-range', undefined, 2, (world, i) => {
      const across = world.amount(diameter);
      return i === 0 ? { has: across, needs: least } : { has: most, needs: across };
    }),
  ];
  if (!grip) return questions;

  const length = asking(scene);
  length.figure(keys.depth);
  length.place(holding.ends?.[0], 'holding/ends');
  length.place(holding.ends?.[1], 'holding/ends');
  const perGrip = holding.tailCentre ? FREE_PER_GRIP_CENTRED : FREE_PER_GRIP;
  const { adding } = scene.worlds;
  questions.push(
    length.question('grip-length', undefined, 1, (world) => {
      const jawsEnd = grip.jawsEnd(world);
      const free = Math.max(0, sense * (endOf(world, adding, sense, 'tail') - jawsEnd));
      return { has: grip.length(world), needs: free / perGrip, at: jawsEnd };
    }),
  );
  if (length.unknown.length > 0) return questions;

  const behind = sense * (grip.ends(scene.worlds.drawn)[0] - endOf(scene.worlds.drawn, adding, sense, 'head'));
  if (behind <= scene.allowanceMm + 1e-6) return questions;
  const spindle = asking(scene);
  const bore = spindle.figure('spindleBore') / 2;
  questions.push(
    spindle.question(
      'through-spindle',
      undefined,
      adding.length,
      (world, i) => {
        const along = world.boxOf(adding[i]!)?.along;
        if (!along) return undefined;
        const head = along[sense === 1 ? 0 : 1] - sense;
        // Stock on the end that is pushed home lies against the jaws' steps.
        const jaws = grip.ends(world)[0] - sense * scene.worlds.pieces[adding[i]!]!.grow;
        if (sense * (jaws - head) <= 1) return undefined;
        return farthestTerm(world, adding[i]!, stretchBetween(head, jaws), bore);
      },
      atMostOf(scene, bore),
    ),
  );
  return questions;
}
