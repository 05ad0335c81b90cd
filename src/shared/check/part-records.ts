import type { PartId } from '../base/ids.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Dimension } from '../build/dimension.ts';
import { inListOrder } from '../build/look-up.ts';
import type { Part } from '../build/part.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import type { Station } from '../build/station.ts';

/** The records of one part, in list order. */
export interface PartRecords {
  readonly part: Part;
  readonly stations: readonly Station[];
  readonly dimensions: readonly Dimension[];
}

/** @returns the part that a record is, or is of. */
export const ownerOf = (record: BuildRecord | undefined): PartId | undefined => {
  if (record?.kind === 'part') return record.id;
  return record?.kind === 'station' || record?.kind === 'dimension' ? record.part : undefined;
};

/** Sorts the records of a build by the part that they are of. */
export function recordsByPart(build: Build): Map<PartId, PartRecords> {
  const found = new Map<PartId, { part: Part; stations: Station[]; dimensions: Dimension[] }>();
  for (const record of build.values()) {
    if (record.kind === 'part') found.set(record.id, { part: record, stations: [], dimensions: [] });
  }
  for (const record of build.values()) {
    if (record.kind === 'station') found.get(record.part)?.stations.push(record);
    else if (record.kind === 'dimension') found.get(record.part)?.dimensions.push(record);
  }
  for (const { stations, dimensions } of found.values()) {
    stations.sort(inListOrder);
    dimensions.sort(inListOrder);
  }
  return found;
}

/** Brings the lists of the parts that a diff touches up to date; `build` has the diff applied already. */
export function changeRecords(records: Map<PartId, PartRecords>, build: Build, diff: BuildDiff): void {
  const changed = new Map<PartId, { stations: Map<string, Station>; dimensions: Map<string, Dimension> }>();
  const listsOf = (id: PartId) => {
    const known = changed.get(id);
    if (known) return known;
    const before = records.get(id);
    const lists = {
      stations: new Map(before?.stations.map((station) => [station.id as string, station])),
      dimensions: new Map(before?.dimensions.map((dimension) => [dimension.id as string, dimension])),
    };
    changed.set(id, lists);
    return lists;
  };
  const drop = (record: BuildRecord): void => {
    if (record.kind === 'station') listsOf(record.part).stations.delete(record.id);
    if (record.kind === 'dimension') listsOf(record.part).dimensions.delete(record.id);
  };
  const put = (record: BuildRecord): void => {
    if (record.kind === 'part') listsOf(record.id);
    if (record.kind === 'station') listsOf(record.part).stations.set(record.id, record);
    if (record.kind === 'dimension') listsOf(record.part).dimensions.set(record.id, record);
  };
  for (const record of diff.removed) drop(record);
  for (const [from] of diff.updated) drop(from);
  for (const record of diff.added) put(record);
  for (const [, to] of diff.updated) put(to);
  for (const [id, { stations, dimensions }] of changed) {
    const part = build.get(id);
    if (part?.kind !== 'part') continue;
    records.set(id, {
      part,
      stations: [...stations.values()].sort(inListOrder),
      dimensions: [...dimensions.values()].sort(inListOrder),
    });
  }
  for (const record of diff.removed) if (record.kind === 'part') records.delete(record.id);
}
