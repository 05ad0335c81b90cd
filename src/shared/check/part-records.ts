import type { PartId } from '../base/ids.ts';
import type { Body } from '../build/body.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Dimension } from '../build/dimension.ts';
import { inListOrder } from '../build/look-up.ts';
import type { Operation } from '../build/operation.ts';
import type { Part } from '../build/part.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import type { Setup } from '../build/setup.ts';
import type { Station } from '../build/station.ts';

/** The records of one part, in list order. */
export interface PartRecords {
  readonly part: Part;
  readonly stations: readonly Station[];
  readonly dimensions: readonly Dimension[];
  readonly bodies: readonly Body[];
  readonly setups: readonly Setup[];
  readonly operations: readonly Operation[];
}

/** The kinds of record that are of one part. */
type OfPart = Station | Dimension | Body | Setup | Operation;

const kindsOfPart: ReadonlySet<BuildRecord['kind']> = new Set<OfPart['kind']>([
  'station',
  'dimension',
  'body',
  'setup',
  'operation',
]);

const isOfPart = (record: BuildRecord): record is OfPart => kindsOfPart.has(record.kind);

/** @returns the part that a record is, or is of. */
export const ownerOf = (record: BuildRecord | undefined): PartId | undefined => {
  if (record?.kind === 'part') return record.id;
  return record && isOfPart(record) ? record.part : undefined;
};

/** Lists of one part while they are put together, by id. */
interface Lists {
  readonly station: Map<string, Station>;
  readonly dimension: Map<string, Dimension>;
  readonly body: Map<string, Body>;
  readonly setup: Map<string, Setup>;
  readonly operation: Map<string, Operation>;
}

const byId = <R extends { readonly id: string }>(records: readonly R[] = []): Map<string, R> =>
  new Map(records.map((record) => [record.id, record]));

const listsFrom = (before: PartRecords | undefined): Lists => ({
  station: byId(before?.stations),
  dimension: byId(before?.dimensions),
  body: byId(before?.bodies),
  setup: byId(before?.setups),
  operation: byId(before?.operations),
});

const inOrder = (part: Part, { station, dimension, body, setup, operation }: Lists): PartRecords => ({
  part,
  stations: [...station.values()].sort(inListOrder),
  dimensions: [...dimension.values()].sort(inListOrder),
  bodies: [...body.values()].sort(inListOrder),
  setups: [...setup.values()].sort(inListOrder),
  operations: [...operation.values()].sort(inListOrder),
});

function put(lists: Lists, record: OfPart): void {
  (lists[record.kind] as Map<string, OfPart>).set(record.id, record);
}

/** Sorts the records of a build by the part that they are of. */
export function recordsByPart(build: Build): Map<PartId, PartRecords> {
  const parts: Part[] = [];
  const found = new Map<PartId, Lists>();
  for (const record of build.values()) {
    if (record.kind !== 'part') continue;
    parts.push(record);
    found.set(record.id, listsFrom(undefined));
  }
  for (const record of build.values()) {
    const lists = isOfPart(record) ? found.get(record.part) : undefined;
    if (lists) put(lists, record as OfPart);
  }
  return new Map(parts.map((part) => [part.id, inOrder(part, found.get(part.id)!)]));
}

/** Brings the lists of the parts that a diff touches up to date; `build` has the diff applied already. */
export function changeRecords(records: Map<PartId, PartRecords>, build: Build, diff: BuildDiff): void {
  const changed = new Map<PartId, Lists>();
  const listsOf = (id: PartId): Lists => {
    const lists = changed.get(id) ?? listsFrom(records.get(id));
    changed.set(id, lists);
    return lists;
  };
  for (const record of [...diff.removed, ...diff.updated.map(([from]) => from)]) {
    if (isOfPart(record)) listsOf(record.part)[record.kind].delete(record.id);
  }
  for (const record of [...diff.added, ...diff.updated.map(([, to]) => to)]) {
    if (record.kind === 'part') listsOf(record.id);
    if (isOfPart(record)) put(listsOf(record.part), record);
  }
  for (const [id, lists] of changed) {
    const part = build.get(id);
    if (part?.kind === 'part') records.set(id, inOrder(part, lists));
  }
  for (const record of diff.removed) if (record.kind === 'part') records.delete(record.id);
}
