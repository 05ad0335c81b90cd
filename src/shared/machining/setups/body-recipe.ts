import type { DimensionId, StationId } from '../../base/ids.ts';
import type { Fellow } from '../../build/setup.ts';
import { axes } from '../../build/station.ts';
import type { Numbers } from '../../plan/numbers.ts';
import { compose } from '../../solid/moves.ts';
import { meshOfSolid, pitchOf } from '../../solid/place-bodies.ts';
import { placeRepeats } from '../../solid/place-repeats.ts';
import { placeShape } from '../../solid/place-shape.ts';
import type { Move, PlacedBody } from '../../solid/placed.ts';
import type { Places } from '../../solid/places.ts';
import { type ChangedNumbers, dimensionsBehind, type Recipe, shifting } from './recipe.ts';

/** Where a fellow lies: the move from its own frame into the first part's, and the stations that place it. */
export interface FellowPlace {
  readonly stations: readonly StationId[];
  move(numbers: ChangedNumbers): Move;
}

/** A fellow part turned by right angles, with three of its stations on three of the first part's. */
export const fellowPlace = ({ turn, meets }: Fellow): FellowPlace => ({
  stations: meets.flat(),
  move({ at }) {
    const move = new Array<number>(12).fill(0);
    meets.forEach(([own, other], row) => {
      // The axis of the fellow that lies along this one of the first part's.
      const column = turn.findIndex((signed) => signed[1] === axes[row]);
      const sign = turn[column]?.[0] === '-' ? -1 : 1;
      if (column >= 0) move[4 * row + column] = sign;
      move[4 * row + 3] = at(own) - sign * at(other);
    });
    return move as unknown as Move;
  },
});

/** A body of the work, as its drawing places it; undefined without a shape. */
export function bodyRecipe(
  body: PlacedBody,
  numbers: Numbers,
  drawn: ChangedNumbers,
  grow: number,
  fellow: FellowPlace | undefined,
): Recipe | undefined {
  const { record, shape, moves, stations, dimensions } = body;
  if (!shape) return undefined;
  const within = (now: ChangedNumbers, own: readonly Move[]): readonly Move[] => {
    if (!fellow) return own;
    const there = fellow.move(now);
    return own.map((move) => compose(there, move));
  };
  return {
    piece: { is: 'body', part: record.part, body: record.id, copy: 0 },
    adds: record.adds,
    grow,
    drawn: { shape, moves: within(drawn, moves) },
    dimensions: dimensionsBehind(numbers, [...stations, ...(fellow?.stations ?? [])], dimensions),
    // A fellow lies turned: it is placed anew.
    shiftFor: fellow ? () => undefined : shifting(numbers, stations, dimensions),
    make(now) {
      const places = placesIn(numbers, now);
      const made = placeShape(record.shape, places);
      const copies = placeRepeats(record.repeats, places);
      return made.ok && copies.ok ? { shape: made.value, moves: within(now, copies.value) } : undefined;
    },
  };
}

function placesIn(numbers: Numbers, now: ChangedNumbers): Places {
  const recordOf = (id: DimensionId) => {
    const record = numbers.record(id);
    return record?.kind === 'dimension' ? record : undefined;
  };
  return {
    at: now.at,
    size: now.size,
    pitch(id) {
      const record = recordOf(id);
      const value = numbers.resolved(id)?.value;
      return record && value !== undefined ? pitchOf(record, value) : undefined;
    },
    isThread(id) {
      const measure = recordOf(id)?.measure;
      return measure?.type === 'size' && measure.form === 'thread';
    },
    mesh(id) {
      const solid = numbers.record(id);
      if (solid?.kind !== 'solid') throw new Error(`the mesh of an imported body is in the build (${id})`);
      return meshOfSolid(solid);
    },
  };
}
