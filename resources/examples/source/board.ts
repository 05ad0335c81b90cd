import { assert } from '../../../src/shared/base/assert.ts';
import type { DimensionId, PartId, StationId } from '../../../src/shared/base/ids.ts';
import type { Body } from '../../../src/shared/build/body.ts';
import { usesOf } from '../../../src/shared/build/body-uses.ts';
import type { Command } from '../../../src/shared/build/command.ts';
import bodyAdd from '../../../src/shared/build/commands/body-add.ts';
import dimensionAdd from '../../../src/shared/build/commands/dimension-add.ts';
import partAdd from '../../../src/shared/build/commands/part-add.ts';
import stationAdd from '../../../src/shared/build/commands/station-add.ts';
import { apply } from '../../../src/shared/build/diff.ts';
import type { Measure } from '../../../src/shared/build/dimension.ts';
import { buildOf, dimensionsOf, partsOf, stationsOf } from '../../../src/shared/build/look-up.ts';
import type { Build } from '../../../src/shared/build/records.ts';
import { defaultSettings } from '../../../src/shared/build/settings.ts';
import type { Axis } from '../../../src/shared/build/station.ts';
import type { BodyEntry } from './body-sketch.ts';
import { idsFor } from './named-ids.ts';
import type { DimensionSketch, PartSketch } from './sketch.ts';

/** A build under the pencil: everything that happens to it goes through the commands, as in the window. */
export interface Board {
  build(): Build;
  /**
   * @param path what a record that the command adds is called, for its id.
   * @throws BugError when the command refuses: an example that cannot be drawn is a mistake in its source.
   */
  run<P>(command: Command<P>, params: P, path?: string): void;
  part(name: string): PartId;
  station(part: string, axis: Axis, name: string): StationId;
  dimension(part: string, name: string): DimensionId;
}

// The examples have no history; commands that note the time get this one.
const NOW = '2026-01-01T00:00:00.000Z';

/** @param start the build to go on from; a new, empty one when none is given. */
export function createBoard(start: Build = buildOf([defaultSettings('new build')])): Board {
  let build = start;
  const partId = (name: string): PartId => named(partsOf(build), name, 'part').id;
  return {
    build: () => build,
    run(command, params, path = '') {
      const step = command.run(build, params, { newId: idsFor(path), now: NOW });
      assert(step.ok, `${command.id} of ${path || JSON.stringify(params)} is done: ${JSON.stringify(step)}`);
      build = apply(build, step.value.diff);
    },
    part: partId,
    station: (part, axis, name) => named(stationsOf(build, partId(part), axis), name, `station of ${part}`).id,
    dimension: (part, name) => named(dimensionsOf(build, partId(part)), name, `dimension of ${part}`).id,
  };
}

function named<R extends { readonly name: string }>(records: readonly R[], name: string, what: string): R {
  const found = records.find((record) => record.name === name);
  assert(found, `there is a ${what} called ${name}`);
  return found;
}

/** Adds a part to the list and draws all of it. */
export function drawPart(board: Board, { fields, axes, sizes, bodies }: PartSketch): void {
  const { name } = fields;
  board.run(partAdd, { set: fields }, name);
  const part = board.part(name);
  for (const { axis, stations } of axes) {
    for (const station of stations) {
      const set = { name: station.name, form: station.form };
      board.run(stationAdd, { part, axis, set }, `${name}/${axis}/${station.name}`);
    }
  }
  for (const { axis, ties } of axes) {
    for (const tie of ties) drawDimension(board, name, tie, axis);
  }
  for (const size of sizes) drawDimension(board, name, size);
  for (const body of bodies) drawBody(board, name, body);
}

/** Adds a body on stations and dimensions that the part has; it acts after those that are there. */
export function drawBody(board: Board, partName: string, { shape, repeats, ...set }: BodyEntry): void {
  const ids = new Map<string, string>();
  // What the fields of a shape are for is the same whether names or ids stand in them.
  const { stations, sizes } = usesOf({ shape, repeats } as unknown as Body);
  for (const { station, axis, field } of stations) ids.set(field, board.station(partName, axis, station));
  for (const { dimension, field } of sizes) ids.set(field, board.dimension(partName, dimension));
  board.run(
    bodyAdd,
    {
      part: board.part(partName),
      shape: withIds(shape, 'shape', ids) as Body['shape'],
      set: { ...set, repeats: withIds(repeats, 'repeats', ids) as Body['repeats'] },
    },
    `${partName}/body/${set.name}`,
  );
}

function withIds(value: unknown, field: string, ids: ReadonlyMap<string, string>): unknown {
  const id = ids.get(field);
  if (id !== undefined) return id;
  if (Array.isArray(value)) return value.map((one, i) => withIds(one, `${field}/${i}`, ids));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withIds(one, `${field}/${key}`, ids)]));
}

/** @param axis the axis of a dimension between stations; a size has none. */
export function drawDimension(board: Board, partName: string, sketch: DimensionSketch, axis?: Axis): void {
  const { name, value, limits, source, finish, note } = sketch;
  board.run(
    dimensionAdd,
    {
      part: board.part(partName),
      measure: measureOf(board, partName, sketch, axis),
      set: { name, value, limits, source, finish, note },
    },
    `${partName}/${name}`,
  );
}

function measureOf(board: Board, part: string, { name, measure }: DimensionSketch, axis: Axis | undefined): Measure {
  if ('form' in measure) return { type: 'size', form: measure.form };
  assert(axis, `the axis of ${name} of ${part} is given`);
  return {
    type: 'between',
    from: board.station(part, axis, measure.from),
    to: board.station(part, axis, measure.to),
  };
}
