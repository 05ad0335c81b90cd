import type { DimensionId, StationId } from '../base/ids.ts';
import { err, ok, type Result } from '../base/result.ts';
import { nameKey } from '../formula/name-key.ts';
import { parseThread } from '../quantity/parse-thread.ts';
import type { Body } from './body.ts';
import {
  isNew,
  isStretch,
  type NewPlace,
  type NewSize,
  type PlaceSketch,
  type RepeatSketch,
  type ShapeSketch,
} from './body-sketch.ts';
import { extentWord, isCentre, placeWord, sizeWord } from './body-sketch-names.ts';
import { type SizeRole, usesOf } from './body-uses.ts';
import type { CommandContext } from './command.ts';
import { type Dimension, defaultDimension, type Measure, type Source } from './dimension.ts';
import type { Draft } from './draft.ts';
import { whyNotKept } from './keepable.ts';
import { dimensionsOf, stationsOf } from './look-up.ts';
import { freeName } from './names.ts';
import type { Part } from './part.ts';
import type { Build } from './records.ts';
import type { Refusal } from './refusals.ts';
import { type Axis, defaultStation, type Station } from './station.ts';

/** What new stations and dimensions of a body take over from it. */
export interface SketchOf {
  readonly part: Part;
  /** Name of the body. */
  readonly name: string;
  readonly finish: Body['finish'];
  readonly source: Source;
}

export interface Drawn {
  readonly shape: Body['shape'];
  readonly repeats: Body['repeats'];
}

interface Hand extends SketchOf {
  readonly draft: Draft;
  readonly context: CommandContext;
  readonly stations: Station[];
  readonly dimensions: Dimension[];
  readonly madeStations: Map<NewPlace | string, StationId>;
  readonly madeSizes: Map<NewSize | string, DimensionId>;
}

/**
 * Makes the stations and dimensions that a sketched body lacks, and gives the body's shape with their ids in place. It is
 * not asked here whether the whole holds (`checkBody`).
 */
export function drawSketch(
  build: Build,
  draft: Draft,
  of: SketchOf,
  sketch: { readonly shape: ShapeSketch; readonly repeats: readonly RepeatSketch[] },
  context: CommandContext,
): Result<Drawn, Refusal> {
  const hand: Hand = {
    ...of,
    draft,
    context,
    stations: [...stationsOf(build, of.part.id)],
    dimensions: [...dimensionsOf(build, of.part.id)],
    madeStations: new Map(),
    madeSizes: new Map(),
  };
  const whole = spreadStretches(sketch);
  const ids = new Map<string, string>();
  // Which fields hold what is known whether or not there are ids in them yet.
  const { stations, sizes } = usesOf(whole as Drawn);
  for (const { station, axis, field } of stations) {
    const id = stationFor(hand, station as PlaceSketch, axis, field);
    if (!id.ok) return id;
    ids.set(field, id.value);
  }
  for (const { dimension, role, field } of sizes) {
    const id = sizeFor(hand, dimension as DimensionId | NewSize, role, field);
    if (!id.ok) return id;
    ids.set(field, id.value);
  }
  return ok({
    shape: filled(whole.shape, 'shape', ids) as Body['shape'],
    repeats: whole.repeats.map((repeat, i) => filled(repeat, `repeats/${i}`, ids) as Body['repeats'][number]),
  });
}

/** A copy with the ids of `ids` in the fields they are for; what is undefined is left out. */
function filled(value: unknown, field: string, ids: ReadonlyMap<string, string>): unknown {
  const id = ids.get(field);
  if (id !== undefined) return id;
  if (Array.isArray(value)) return value.map((one, i) => filled(one, `${field}/${i}`, ids));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, one]) => one !== undefined)
      .map(([key, one]) => [key, filled(one, `${field}/${key}`, ids)]),
  );
}

interface Ended extends NewPlace {
  /** It ends a stretch: its dimension is called by how far the body reaches. */
  readonly ends?: true;
}

/** Writes stretches out as two places, the second measured from the first. */
function spreadStretches<S extends { readonly shape: ShapeSketch; readonly repeats: readonly RepeatSketch[] }>(
  sketch: S,
): { readonly shape: object; readonly repeats: readonly object[] } {
  const spread = (value: object): object =>
    Object.fromEntries(
      Object.entries(value).map(([key, one]: [string, unknown]) => {
        if (!isStretch(one)) return [key, one];
        const from: PlaceSketch = one.from ?? { value: '0' };
        const to: Ended = { value: one.length, from, ends: true };
        return [key, [from, to]];
      }),
    );
  return { shape: spread(sketch.shape), repeats: sketch.repeats };
}

function stationFor(hand: Hand, place: PlaceSketch, axis: Axis, field: string): Result<StationId, Refusal> {
  if (!isNew(place)) return ok(place);
  const given = place.new?.trim() ?? '';
  const key = given === '' ? place : `${axis} ${nameKey(given)}`;
  const made = hand.madeStations.get(key);
  if (made) return ok(made);
  const hadDatum = hand.stations.some((station) => station.axis === axis && station.datum);
  const value = place.value.trim();
  const isZero = /^[+-]?0*[.,]?0*$/.test(value) && value !== '';
  // On an axis that has nothing yet, a place that is measured from nothing else is where measuring begins.
  if (!hadDatum && place.from === undefined && (isZero || value === '')) {
    return keepStation(hand, key, axis, given, field, true);
  }
  const from = place.from === undefined ? datumOf(hand, axis) : stationFor(hand, place.from, axis, field);
  if (!from.ok) return from;
  if (given === '' && isZero) {
    hand.madeStations.set(key, from.value);
    return from;
  }
  const id = keepStation(hand, key, axis, given, field, false);
  if (!id.ok || value === '') return id;
  const name = (place as Ended).ends ? `${hand.name} ${extentWord(axis)}` : nameOfStation(hand, id.value);
  const dimension = keepDimension(hand, name, { type: 'between', from: from.value, to: id.value }, value);
  return dimension.ok ? id : dimension;
}

const nameOfStation = (hand: Hand, id: StationId): string =>
  hand.stations.find((station) => station.id === id)?.name ?? hand.name;

function datumOf(hand: Hand, axis: Axis): Result<StationId, Refusal> {
  const datum = hand.stations.find((station) => station.axis === axis && station.datum);
  if (datum) return ok(datum.id);
  return keepStation(hand, `${axis} `, axis, `${axis} datum`, '', true);
}

function keepStation(
  hand: Hand,
  key: NewPlace | string,
  axis: Axis,
  given: string,
  field: string,
  datum: boolean,
): Result<StationId, Refusal> {
  const { part, stations, draft, context } = hand;
  const stem = given === '' ? `${hand.name} ${placeWord(field, axis)}` : given;
  const ofAxis = stations.filter((station) => station.axis === axis);
  const name = freeName(
    stem,
    ofAxis.map((station) => station.name),
  );
  const station: Station = {
    ...defaultStation(context.newId('station'), part.id, axis, name, nextOrder(stations)),
    form: isCentre(field) ? 'centreline' : 'face',
    datum,
  };
  const refused = whyNotKept(station);
  if (refused) return err(refused);
  draft.put(station);
  stations.push(station);
  hand.madeStations.set(key, station.id);
  return ok(station.id);
}

const newMeasure = (role: SizeRole, value: string): Measure => {
  switch (role) {
    case 'diameter':
      return { type: 'size', form: parseThread(value)?.ok ? 'thread' : 'diameter' };
    case 'width':
      return { type: 'size', form: 'length' };
    default:
      return { type: 'size', form: role };
  }
};

function sizeFor(hand: Hand, size: DimensionId | NewSize, role: SizeRole, field: string): Result<DimensionId, Refusal> {
  if (!isNew(size)) return ok(size);
  const given = size.new?.trim() ?? '';
  const key = given === '' ? size : nameKey(given);
  const made = hand.madeSizes.get(key);
  if (made) return ok(made);
  const value = size.value.trim();
  const name = given === '' ? `${hand.name} ${sizeWord(field)}` : given;
  const id = keepDimension(hand, name, newMeasure(role, value), value);
  if (id.ok) hand.madeSizes.set(key, id.value);
  return id;
}

function keepDimension(hand: Hand, stem: string, measure: Measure, value: string): Result<DimensionId, Refusal> {
  const { part, dimensions, draft, context } = hand;
  const name = freeName(
    stem,
    dimensions.map((dimension) => dimension.name),
  );
  const dimension: Dimension = {
    ...defaultDimension(context.newId('dimension'), part.id, name, measure, nextOrder(dimensions)),
    value,
    source: hand.source,
    finish: hand.finish === 'machined' ? 'machined' : 'as cast',
  };
  const refused = whyNotKept(dimension);
  if (refused) return err(refused);
  draft.put(dimension);
  dimensions.push(dimension);
  return ok(dimension.id);
}

const nextOrder = (list: readonly { readonly order: number }[]): number =>
  Math.floor(list.reduce((most, { order }) => Math.max(most, order), 0)) + 1;
