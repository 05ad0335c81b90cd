import type { BodyId, DimensionId, OperationId, StationId } from '../base/ids.ts';
import { usesOf } from '../build/body-uses.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import type { Numbers } from '../plan/numbers.ts';
import type { PlacedBody } from '../solid/placed.ts';
import { isCutAway } from './drawn-stock.ts';
import { faceFields } from './shifted-body.ts';

/** Who asks that a surface be machined. */
export type AskedBy =
  | { readonly is: 'operation'; readonly operation: OperationId }
  /** A body that is machined all over. */
  | { readonly is: 'body'; readonly body: BodyId }
  /** The casting's own list of stock. */
  | { readonly is: 'written' };

/** A surface of the casting that is to be machined: a station where it has a face, or a size of round or parallel faces. */
export interface MachinedSurface {
  readonly of: StationId | DimensionId;
  /** Where only this body is machined there; undefined: all of the casting that has a face there. */
  readonly body: BodyId | undefined;
  readonly by: readonly AskedBy[];
}

const isStation = (id: string): id is StationId => id.startsWith('station:');
const isDimension = (id: string): id is DimensionId => id.startsWith('dimension:');

/** Tools that make a hole and no face: the stations that they make are depths. */
const makesHoles: ReadonlySet<Operation['process']> = new Set(['drill', 'ream', 'tap', 'countersink', 'counterbore']);

/**
 * What is machined of a casting: stations and sizes that operations make, bodies that are machined all over, and stations with
 * stock of their own. Bodies that machining takes away are not among them: see `drawnStock`.
 */
export function machinedSurfaces(
  bodies: readonly PlacedBody[],
  operations: readonly Operation[],
  casting: Pick<Casting, 'stock'>,
  numbers: Numbers,
): readonly MachinedSurface[] {
  const found = new Map<string, { of: MachinedSurface['of']; body: BodyId | undefined; by: AskedBy[] }>();
  const add = (of: MachinedSurface['of'], body: BodyId | undefined, by: AskedBy) => {
    const key = `${of} ${body ?? ''}`;
    const known = found.get(key);
    if (known) known.by.push(by);
    else found.set(key, { of, body, by: [by] });
  };
  const isFace = (id: StationId): boolean => {
    const station = numbers.record(id);
    return station?.kind === 'station' && station.form !== 'centreline';
  };
  const allOver = (body: PlacedBody, by: AskedBy) => {
    for (const { station } of faceFields(body.record)) if (isFace(station)) add(station, body.record.id, by);
    for (const { dimension, field } of usesOf(body.record).sizes)
      if (isAcross(field)) add(dimension, body.record.id, by);
  };
  for (const operation of operations) {
    const by = { is: 'operation', operation: operation.id } as const;
    for (const id of operation.makes) {
      if (isStation(id)) {
        if (!makesHoles.has(operation.process) && isFace(id)) add(id, undefined, by);
      } else if (isDimension(id)) {
        const record = numbers.record(id);
        // A distance is made true by the faces at its ends; it is they that are named for stock.
        if (record?.kind === 'dimension' && record.measure.type === 'size') add(id, undefined, by);
      } else {
        const body = bodies.find(({ record }) => record.id === id);
        if (body && !isCutAway(body)) allOver(body, by);
      }
    }
  }
  for (const body of bodies) {
    const { record } = body;
    if (record.adds && record.finish === 'machined') allOver(body, { is: 'body', body: record.id });
  }
  for (const { station } of casting.stock) add(station, undefined, { is: 'written' });
  return [...found.values()];
}

/** Fields of sizes that lie between two surfaces opposite one another, stock being on both. */
export const isAcross = (field: string): boolean =>
  /^shape\/(diameter|bore|diameters\/\d+|outline\/\d+\/diameter|width|thickness|counterbore\/diameter)$/.test(field);
