import type { DimensionId, StationId } from '../../base/ids.ts';
import type { SizeRole } from '../../build/body-uses.ts';
import { axes } from '../../build/station.ts';
import type { KnownAmount, KnownPlace } from '../../plan/amounts.ts';
import { type Changes, type Numbers, placeChanged, sizeChanged } from '../../plan/numbers.ts';
import type { ExactShape, Move, Vec3 } from '../../solid/placed.ts';
import type { Piece } from '../setup-check.ts';

/** A shape with its copies, in the first part's frame. */
export interface Made {
  readonly shape: ExactShape;
  readonly moves: readonly Move[];
}

/** One thing that goes round or along: how it is drawn, and how it comes out when dimensions change. */
export interface Recipe {
  readonly piece: Piece;
  readonly adds: boolean;
  /** Stock all round, mm. */
  readonly grow: number;
  readonly drawn: Made;
  /** The dimensions that shape and place hang on. */
  readonly dimensions: ReadonlySet<DimensionId>;
  /** How the whole of it shifts for each mm that the dimension is more; undefined where it changes otherwise. */
  shiftFor(dimension: DimensionId): Vec3 | undefined;
  /** Undefined where it no longer makes a shape. */
  make(numbers: ChangedNumbers): Made | undefined;
}

/** The numbers of a set-up, were some dimensions changed. All ids asked for are known. */
export interface ChangedNumbers {
  at(station: StationId): number;
  size(dimension: DimensionId, role: SizeRole): number;
  place(place: KnownPlace): number;
  amount(amount: KnownAmount): number;
}

/** Takes the dimensions behind whatever is asked. */
export interface Sink {
  noted: Set<DimensionId>;
}

export function changedNumbers(numbers: Numbers, changes: Changes, sink?: Sink): ChangedNumbers {
  const at = (station: StationId): number => {
    const place = numbers.place(station);
    if (!place) return Number.NaN;
    if (sink) for (const { dimension } of place.path) sink.noted.add(dimension);
    return placeChanged(place, changes);
  };
  const size = (dimension: DimensionId, role: SizeRole): number => {
    const record = numbers.record(dimension);
    const value = numbers.resolved(dimension)?.value;
    if (record?.kind !== 'dimension' || value === undefined) return Number.NaN;
    sink?.noted.add(dimension);
    return sizeChanged(record, value, role, changes);
  };
  return {
    at,
    size,
    place: ({ station, beyond }) => at(station) + beyond,
    amount: (amount) => (amount.is === 'written' ? amount.value : size(amount.dimension, amount.role)),
  };
}

/** The dimensions behind some stations and sizes. */
export function dimensionsBehind(
  numbers: Numbers,
  stations: Iterable<StationId>,
  sizes: Iterable<DimensionId>,
): Set<DimensionId> {
  const found = new Set<DimensionId>(sizes);
  for (const station of stations) for (const { dimension } of numbers.place(station)?.path ?? []) found.add(dimension);
  return found;
}

/**
 * Tells by which dimensions something shifts as a whole: those that move all of its stations along an axis alike, and that it takes
 * for no size. Then neither its shape nor its copies need be worked out anew.
 */
export function shifting(
  numbers: Numbers,
  stations: readonly StationId[],
  sizes: readonly DimensionId[],
): Recipe['shiftFor'] {
  const known = new Map<DimensionId, Vec3 | undefined>();
  const find = (dimension: DimensionId): Vec3 | undefined => {
    if (sizes.includes(dimension)) return undefined;
    const shift: [number | undefined, number | undefined, number | undefined] = [undefined, undefined, undefined];
    for (const id of stations) {
      const station = numbers.record(id);
      if (station?.kind !== 'station') return undefined;
      const k = axes.indexOf(station.axis) as 0 | 1 | 2;
      let moves = 0;
      for (const step of numbers.place(id)?.path ?? []) if (step.dimension === dimension) moves += step.sign;
      if (shift[k] !== undefined && shift[k] !== moves) return undefined;
      shift[k] = moves;
    }
    return [shift[0] ?? 0, shift[1] ?? 0, shift[2] ?? 0];
  };
  return (dimension) => {
    if (!known.has(dimension)) known.set(dimension, find(dimension));
    return known.get(dimension);
  };
}
