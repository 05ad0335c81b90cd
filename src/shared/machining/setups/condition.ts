import type { BodyId, StationId } from '../../base/ids.ts';
import type { Operation } from '../../build/operation.ts';
import type { PartCondition } from '../../build/setup.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { bodiesMade } from '../route/made-holes.ts';

/** How a part stands in a condition: which of its bodies are there, and which have stock on them still. */
export interface BodiesThere {
  /** In list order. */
  readonly there: readonly PlacedBody[];
  readonly withStock: ReadonlySet<BodyId>;
}

/**
 * A part as cast, finished, or after one of its operations.
 *
 * What adds is always there: metal that is machined must have been cast. What takes away by machining is there once an operation
 * has made it. Stock lies on what adds and is machined but not made yet, and on what hangs on a face, a shoulder or a size that an operation
 * still to come makes true; where no operation says what it makes it lies on all that adds, for nothing says which surfaces stay as cast.
 *
 * @param operations of the part, in list order
 * @param isCentreline whether a station is one: what makes a centreline true takes nothing off round about
 */
export function bodiesThere(
  bodies: readonly PlacedBody[],
  condition: PartCondition,
  operations: readonly Operation[],
  isCentreline: (station: StationId) => boolean,
): BodiesThere {
  if (condition.is === 'finished') return { there: bodies, withStock: new Set() };
  const done = condition.is === 'after' ? operations.findIndex(({ id }) => id === condition.operation) + 1 : 0;
  const made = new Set<BodyId>();
  const madeIds = new Set<string>();
  for (const operation of operations.slice(0, done)) {
    for (const { record } of bodiesMade(operation, bodies)) made.add(record.id);
    for (const id of operation.makes) madeIds.add(id);
  }
  const toCome = new Set<string>();
  for (const { makes } of operations.slice(done)) for (const id of makes) toCome.add(id);
  const nothingSaid = operations.every(({ makes }) => makes.length === 0);
  const isWanting = ({ record, stations, dimensions }: PlacedBody): boolean => {
    if (nothingSaid || toCome.has(record.id)) return true;
    if (record.finish === 'machined' && !made.has(record.id)) {
      // Turned all over by the sizes and faces that were made, a body is made without being named.
      const own = [...stations.filter((id) => !isCentreline(id)), ...dimensions];
      if (own.length === 0 || own.some((id) => !madeIds.has(id))) return true;
    }
    return dimensions.some((id) => toCome.has(id)) || stations.some((id) => toCome.has(id) && !isCentreline(id));
  };
  const there = bodies.filter(({ record }) => record.adds || record.finish !== 'machined' || made.has(record.id));
  const withStock = there.filter((body) => body.record.adds && isWanting(body)).map(({ record }) => record.id);
  return { there, withStock: new Set(withStock) };
}
