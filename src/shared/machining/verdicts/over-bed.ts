import { latheStand, stretchBetween } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { clearRadius } from '../swept/clear-radius.ts';
import { asking } from './asking.ts';
import { atMostOf, farthestTerm } from './farthest-term.ts';
import type { Question } from './question.ts';
import { isTurning } from './turning.ts';

/**
 * Over the bed, and in its gap: what turns must nowhere reach farther from the line of centres than the bed allows.
 *
 *     margin = radius allowed − greatest radius of the work there
 *
 * Over the bed half of `swingOverBed`, or the distance from the line of centres to the bed's outline where the machine has one; in the gap
 * half of `swingInGap`, over `gapLength` from the face of the nose. What lies behind the nose is within the headstock. Where it
 * is not known how far from the nose the work stands, all of it must pass over the bed.
 */
export function askOverBed(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const { worlds, figures } = scene;
  const stand = latheStand(scene);
  const pieces = worlds.adding;
  const hasGap = figures.values.has('swingInGap');
  const ask = asking(scene);
  const allowed = figures.bed
    ? clearRadius(figures.bed.map(({ acrossMm, downMm }) => ({ across: acrossMm, down: downMm }))).radius
    : ask.figure('swingOverBed') / 2;
  const gapLength = hasGap ? ask.figure('gapLength') : 0;
  const isPlaced = stand.unknown.length === 0;
  const everywhere = (world: World, i: number) =>
    farthestTerm(world, pieces[i]!, everyPlace(world, pieces[i]!), allowed);
  if (!isPlaced) {
    const clears = pieces.every((_, i) => {
      const term = everywhere(worlds.drawn, i);
      return !term || term.has >= term.needs;
    });
    // In the gap it may pass: whether it does hangs on what is not known.
    if (hasGap && !clears) ask.miss(...stand.unknown);
    return [ask.question('over-bed', undefined, pieces.length, everywhere, atMostOf(scene, allowed))];
  }
  const beyond = (world: World, i: number) => {
    const from = stand.nose(world) + stand.sense * gapLength;
    const far = endBeyond(world, pieces[i]!, stand.sense);
    if (far === undefined || stand.sense * (far - from) <= 0) return undefined;
    return farthestTerm(world, pieces[i]!, stretchBetween(from, far), allowed);
  };
  const overBed = ask.question('over-bed', undefined, pieces.length, beyond, atMostOf(scene, allowed));
  if (!hasGap) return [overBed];
  const inGap = asking(scene);
  const gapRadius = inGap.figure('swingInGap') / 2;
  const length = inGap.figure('gapLength');
  const within = (world: World, i: number) => {
    const nose = stand.nose(world);
    return farthestTerm(world, pieces[i]!, stretchBetween(nose, nose + stand.sense * length), gapRadius);
  };
  return [overBed, inGap.question('in-gap', undefined, pieces.length, within, atMostOf(scene, gapRadius))];
}

/** All of a piece along the line. */
function everyPlace(world: World, piece: number): readonly [number, number] {
  const along = world.boxOf(piece)?.along;
  return along ? [along[0] - 1, along[1] + 1] : [0, 0];
}

/** A place beyond the tail end of a piece. */
function endBeyond(world: World, piece: number, sense: 1 | -1): number | undefined {
  const along = world.boxOf(piece)?.along;
  return along && along[sense === 1 ? 1 : 0] + sense;
}
