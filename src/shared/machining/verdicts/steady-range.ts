import type { Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import { farthestTerm } from './farthest-term.ts';
import type { Question } from './question.ts';
import { isTurning } from './turning.ts';

/**
 * A fixed steady closes on the round that it carries, and lets through what lies within its width.
 *
 *     margin = the least of: diameter − steadyLeast, steadyMost − diameter, half of steadyMost − greatest radius within its width
 */
export function askSteadyRange(scene: Scene): readonly Question[] {
  const { holding } = scene.setup;
  if (!isTurning(scene) || holding.as !== 'steady') return [];
  const ask = asking(scene);
  const [least, most] = [ask.figure('steadyLeast'), ask.figure('steadyMost')];
  const at = ask.place(holding.at, 'holding/at');
  const diameter = ask.amount(holding.diameter, 'diameter', 'holding/diameter');
  const half = (ask.figureIfKnown('steadyWidth') ?? 0) / 2 + 1e-3;
  const { adding } = scene.worlds;
  return [
    ask.question('steady-range', undefined, adding.length + 2, (world, i) => {
      const place = world.place(at);
      const piece = adding[i];
      if (piece !== undefined) return farthestTerm(world, piece, [place - half, place + half], most / 2);
      const across = world.amount(diameter);
      return i === adding.length ? { has: across, needs: least, at: place } : { has: most, needs: across, at: place };
    }),
  ];
}
