import { type Cut, cutWithin } from '../setups/cuts.ts';
import type { World } from '../setups/world.ts';
import type { Asking } from './asking.ts';
import { latheWay } from './turning.ts';

/**
 * Where the edge of a tool set square would stand for a cut, from its headmost to its tailmost place, along the bed: places times
 * `sense`, so that they rise towards the tailstock. The saddle is placed by this. A boring bar's own edge lies ahead of the block by the bar's free length.
 *
 * @param shift how far the saddle stands off square, towards the tailstock positive, mm
 */
export function saddleFor(
  cut: Cut,
  sense: 1 | -1,
  ask: Asking,
  shift = 0,
): ((world: World) => readonly [head: number, tail: number]) | undefined {
  const way = latheWay(cut);
  if (way === undefined || way === 'drilled') return undefined;
  let ahead = shift;
  if (way === 'inside') {
    if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
    ahead += (cut.overhangMm ?? Number.NaN) + ask.figure('toolBlockWidth') / 2;
  }
  return (world) => {
    const [head, tail] = alongBed(cut, world, sense);
    return [head + ahead, tail + ahead];
  };
}

/** The ends of a cut along the bed, headmost first: places times `sense`. */
export function alongBed(cut: Pick<Cut, 'ends'>, world: World, sense: 1 | -1): readonly [head: number, tail: number] {
  const [low, high] = cutWithin(cut, world);
  return sense === 1 ? [low, high] : [-high, -low];
}
