import type { DimensionId, StationId } from '../base/ids.ts';
import { type SizeRole, valueInRole } from '../build/body-uses.ts';
import type { Dimension } from '../build/dimension.ts';
import type { BuildRecord, RecordId } from '../build/records.ts';
import type { AxisDrawing, Drawing, PlacedStation, ResolvedDimension } from '../drawing/drawing.ts';

/** One dimension on the way from a datum to a station; `sign` −1 where it is walked from its `to` to its `from`. */
export interface PathStep {
  readonly dimension: DimensionId;
  readonly sign: 1 | -1;
}

/** Where a station stands, mm from the datum of its axis, and by which dimensions. */
export interface StationPlace {
  readonly at: number;
  readonly path: readonly PathStep[];
}

/** The numbers of the drawing that a set-up is worked out from, by id, as drawn. */
export interface Numbers {
  /** Undefined where no way leads from a datum to it. */
  place(station: StationId): StationPlace | undefined;
  /** Undefined where no such dimension is. */
  resolved(dimension: DimensionId): ResolvedDimension | undefined;
  record(id: RecordId): BuildRecord | undefined;
  /** Dimensions whose formulas name it. */
  namedBy(dimension: DimensionId): readonly DimensionId[];
}

/** An axis keeps its identity until an edit moves something on it. */
const stationsOf = new WeakMap<AxisDrawing, ReadonlyMap<StationId, PlacedStation>>();

/** The stations of an axis that a way leads to from its datum. */
function stationsOn(axis: AxisDrawing): ReadonlyMap<StationId, PlacedStation> {
  const known = stationsOf.get(axis);
  if (known) return known;
  const placed = axis.datum === undefined ? [] : axis.stations.filter(({ group }) => group === 0);
  const stations = new Map(placed.map((station) => [station.id, station]));
  stationsOf.set(axis, stations);
  return stations;
}

type Get = (id: RecordId) => BuildRecord | undefined;

/** Walks the path from the origin; the signs are those of the records as they are now. */
function signed(path: readonly DimensionId[], origin: StationId, get: Get): readonly PathStep[] {
  const steps: PathStep[] = [];
  let at: StationId = origin;
  for (const id of path) {
    const record = get(id);
    if (record?.kind !== 'dimension' || record.measure.type !== 'between') break;
    const { from, to } = record.measure;
    const sign = from === at ? 1 : -1;
    steps.push({ dimension: id, sign });
    at = sign === 1 ? to : from;
  }
  return steps;
}

/** Remembers what was asked: made anew for each edit. */
export function numbersOf(drawing: Drawing, get: Get): Numbers {
  const places = new Map<StationId, StationPlace | undefined>();
  const find = (id: StationId): StationPlace | undefined => {
    const station = get(id);
    if (station?.kind !== 'station') return undefined;
    const axis = drawing.axesOf(station.part).find((one) => one.axis === station.axis);
    const placed = axis && stationsOn(axis).get(id);
    const origin = axis?.groups[0]?.origin;
    return placed && origin && { at: placed.at, path: signed(placed.path, origin, get) };
  };
  return {
    record: get,
    place(id) {
      if (!places.has(id)) places.set(id, find(id));
      return places.get(id);
    },
    namedBy: (id) => drawing.namedBy(id),
    resolved: (id) => (get(id)?.kind === 'dimension' ? drawing.dimension(id) : undefined),
  };
}

/** Dimensions with what each of them is more (or less) than drawn, in mm or degrees. */
export type Changes = ReadonlyMap<DimensionId, number>;

export const AS_DRAWN: Changes = new Map();

/** Where a station would stand, were some dimensions changed. */
export function placeChanged({ at, path }: StationPlace, changes: Changes): number {
  if (changes.size === 0) return at;
  let sum = at;
  for (const { dimension, sign } of path) {
    const change = changes.get(dimension);
    if (change !== undefined) sum += sign * change;
  }
  return sum;
}

/** A size in the role it serves in, were some dimensions changed. */
export const sizeChanged = (record: Dimension, value: number, role: SizeRole, changes: Changes): number =>
  valueInRole(record, value + (changes.get(record.id) ?? 0), role);
