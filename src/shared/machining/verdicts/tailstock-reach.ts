import type { Cut } from '../setups/cuts.ts';
import type { LatheStand } from '../setups/lathe-stand.ts';
import type { World } from '../setups/world.ts';
import type { Asking } from './asking.ts';
import { saddleFor } from './saddle-at.ts';

/**
 * How far the barrel must stand out of the tailstock to reach over the saddle for a cut made from it; what is missing is put into `ask`.
 *
 * @param shift of the saddle off square, towards the tailstock positive, mm
 */
export function barrelOver(
  { sense, tailPoint }: LatheStand,
  cut: Cut,
  ask: Asking,
  shift: number,
): ((world: World) => number) | undefined {
  const edge = saddleFor(cut, sense, ask, shift);
  if (!edge || !tailPoint) return undefined;
  const towardsTail = ask.figure('saddleTail');
  const centre = ask.figure('tailCentreLength');
  return (world) => Math.max(0, edge(world)[1] + towardsTail - (sense * tailPoint(world) + centre));
}
