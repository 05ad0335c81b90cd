import { unreachable } from '../base/assert.ts';
import type { DimensionId } from '../base/ids.ts';
import { ok } from '../base/result.ts';
import type { Repeat } from '../build/body.ts';
import { axesAcross } from '../build/body-uses.ts';
import { compose, mirrorAbout, STAY, shiftAlong, turnAbout } from './moves.ts';
import { SAME_MM } from './outline.ts';
import { noSize, type Placed, shapeProblem } from './place-problem.ts';
import type { Move } from './placed.ts';
import { type Places, pointAt } from './places.ts';

/** More copies of one body than this are a slip of the pen; a perforated plate of 40 by 50 holes still is one body. */
const MOST_COPIES = 2000;

/** The moves to all copies of a body: those of each repeat applied to all that came before it. */
export function placeRepeats(repeats: readonly Repeat[], places: Places): Placed<readonly Move[]> {
  let moves: readonly Move[] = [STAY];
  for (const repeat of repeats) {
    const each = movesOf(repeat, places);
    if (!each.ok) return each;
    if (each.value.length * moves.length > MOST_COPIES) return shapeProblem('too-many-copies', countIn(repeat));
    moves = each.value.flatMap((move) => moves.map((before) => compose(move, before)));
  }
  return ok(moves);
}

const countIn = (repeat: Repeat): DimensionId | undefined => (repeat.type === 'mirror' ? undefined : repeat.count);

function movesOf(repeat: Repeat, places: Places): Placed<readonly Move[]> {
  switch (repeat.type) {
    case 'circle':
      return roundCircle(repeat, places);
    case 'row':
      return inRow(repeat, places);
    case 'mirror':
      return ok([STAY, mirrorAbout(repeat.axis, places.at(repeat.about))]);
    default:
      return unreachable(repeat);
  }
}

function countOf(id: DimensionId, places: Places): Placed<number> {
  const count = places.size(id, 'count');
  if (!Number.isInteger(count) || count < 1) return shapeProblem('count-not-whole', id);
  return count > MOST_COPIES ? shapeProblem('too-many-copies', id) : ok(count);
}

function roundCircle(
  { axis, centre, count: countId, circle, start }: Extract<Repeat, { type: 'circle' }>,
  places: Places,
): Placed<readonly Move[]> {
  const count = countOf(countId, places);
  if (!count.ok) return count;
  const outwards = circle === undefined ? 0 : places.size(circle, 'diameter') / 2;
  if (circle !== undefined && outwards <= SAME_MM) return noSize(circle);
  const first = start === undefined ? 0 : places.size(start, 'angle');
  const { u, v } = pointAt(centre, places);
  const out = shiftAlong(axesAcross(axis)[0], outwards);
  return ok(
    Array.from({ length: count.value }, (_, k) => compose(turnAbout(axis, u, v, first + (360 * k) / count.value), out)),
  );
}

function inRow(
  { axis, count: countId, pitch: pitchId }: Extract<Repeat, { type: 'row' }>,
  places: Places,
): Placed<readonly Move[]> {
  const count = countOf(countId, places);
  if (!count.ok) return count;
  const pitch = places.size(pitchId, 'length');
  // A pitch of less than nothing runs the other way; one of nothing puts every copy on the first.
  if (Math.abs(pitch) <= SAME_MM) return noSize(pitchId);
  return ok(Array.from({ length: count.value }, (_, k) => shiftAlong(axis, k * pitch)));
}
