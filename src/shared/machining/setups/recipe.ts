import type { DimensionId, StationId } from '../../base/ids.ts';
import type { SizeRole } from '../../build/body-uses.ts';
import type { KnownAmount, KnownPlace } from '../../plan/amounts.ts';
import { type Changes, type Numbers, placeChanged, sizeChanged } from '../../plan/numbers.ts';
import type { ExactShape, Move } from '../../solid/placed.ts';
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
