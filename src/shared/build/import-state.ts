import type { PartId } from '../base/ids.ts';
import { ok, type Result } from '../base/result.ts';
import { nameKey } from '../formula/name-key.ts';
import type { CsvRow } from './csv.ts';
import type { Dimension } from './dimension.ts';
import { shorten } from './keepable.ts';
import { dimensionsOf, partsOf, stationsOf } from './look-up.ts';
import { defaultPart, type Part } from './part.ts';
import type { Build } from './records.ts';
import { type RowRefusal, refuseRow } from './row-refusal.ts';
import type { Station } from './station.ts';

/** A part while rows are being taken into it. */
export interface PartInHand {
  readonly record: Part;
  readonly stations: readonly Station[];
  /** A place at the end of its lists, a new one at each call. */
  nextOrder(): number;
}

/** The build as it stands after the rows taken so far. */
export interface ImportState {
  partsNamed(name: string): readonly PartInHand[];
  /** A part that is not in the build until it is taken. */
  newPart(id: PartId, name: string): PartInHand;
  /** The dimension that a row speaks of; undefined when it is new. */
  dimensionOf(part: PartId, row: CsvRow): Result<Dimension | undefined, RowRefusal>;
  take(record: Part | Station | Dimension): void;
}

interface Held {
  record: Part;
  stations: Station[];
  dimensions: Map<string, readonly Dimension[]>;
  order: number;
}

const rowKey = (part: string, name: string): string => JSON.stringify([nameKey(part), nameKey(name)]);

function addTo<T>(groups: Map<string, T[]>, key: string, member: T): readonly T[] {
  const group = groups.get(key) ?? [];
  group.push(member);
  groups.set(key, group);
  return group;
}

export function importState(build: Build, rows: readonly CsvRow[]): ImportState {
  const held = new Map<PartId, Held>();
  const byName = new Map<string, Held[]>();
  const hold = (record: Part, stations: readonly Station[], dimensions: readonly Dimension[]): Held => {
    const byDimensionName = new Map<string, Dimension[]>();
    for (const dimension of dimensions) addTo(byDimensionName, nameKey(dimension.name), dimension);
    const order = Math.max(0, ...[stations.at(-1), dimensions.at(-1)].map((last) => Math.floor(last?.order ?? 0)));
    return { record, stations: [...stations], dimensions: byDimensionName, order };
  };
  const keep = (part: Held): void => {
    held.set(part.record.id, part);
    addTo(byName, nameKey(part.record.name), part);
  };
  for (const part of partsOf(build)) keep(hold(part, stationsOf(build, part.id), dimensionsOf(build, part.id)));
  let lastPart = partsOf(build).at(-1)?.order ?? 0;

  // Rows that speak of one dimension by the same names, in the order of the file.
  const sharing = new Map<string, CsvRow[]>();
  const places = new Map<CsvRow, number>();
  for (const row of rows) {
    const alike = addTo(sharing, rowKey(row.part, row.name), row);
    places.set(row, alike.length - 1);
  }
  const pending = new Map<PartId, Held>();
  const inHand = (part: Held): PartInHand => ({
    record: part.record,
    stations: part.stations,
    nextOrder: () => {
      part.order += 1;
      return part.order;
    },
  });

  return {
    partsNamed: (name) => (byName.get(nameKey(name)) ?? []).map(inHand),
    newPart(id, name) {
      const part = hold(defaultPart(id, name, Math.floor(lastPart) + 1), [], []);
      pending.set(id, part);
      return inHand(part);
    },
    dimensionOf(partId, row) {
      const named = held.get(partId)?.dimensions.get(nameKey(row.name)) ?? [];
      const alike = sharing.get(rowKey(row.part, row.name)) ?? [row];
      const place = places.get(row) ?? 0;
      if (named.length === alike.length) return ok(named[place]);
      if (named.length > 1) {
        return refuseRow(
          `${named.length} dimensions of this part are called "${shorten(row.name)}".`,
          'Rename all but one of them, then import again.',
        );
      }
      if (place > 0) {
        const [first] = alike;
        return refuseRow(
          `Line ${first?.line} speaks of the same dimension.`,
          'Keep one of the two lines, or give the dimensions different names.',
        );
      }
      return ok(named[0]);
    },
    take(record) {
      if (record.kind === 'part') {
        const part = pending.get(record.id);
        if (part) keep(part);
        lastPart = Math.max(lastPart, record.order);
      } else if (record.kind === 'station') held.get(record.part)?.stations.push(record);
      else {
        // Kept under its name for rows to come; a row that speaks of it again is refused by its place in the file.
        const dimensions = held.get(record.part)?.dimensions;
        if (!dimensions?.has(nameKey(record.name))) dimensions?.set(nameKey(record.name), [record]);
      }
    },
  };
}
