import type { RecordId } from '../../../../shared/build/records.ts';
import type { Sheet } from '../../../../shared/sheet/sheet.ts';
import type { BodyRow } from '../../../engine/views/bodies.ts';
import type { PartSheet } from '../../../engine/views/part.ts';
import type { SheetItem } from './sheet-drawing.tsx';

/** Everything on a sheet that can be picked, each once: what is unplaced last, the rest in the order of the part's own lists. */
export function itemsOf(sheet: Sheet, part: PartSheet, bodies: readonly BodyRow[]): readonly SheetItem[] {
  const drawn = new Set<string>();
  for (const { stands } of sheet.marks) for (const id of stands) drawn.add(id);
  const unplaced = new Map(sheet.unplaced.map(({ of, words }) => [of.id as string, words]));
  const items: SheetItem[] = [];
  const put = (id: RecordId, words: string) => {
    if (drawn.has(id) && !unplaced.has(id)) items.push({ id, words });
  };
  for (const { record, value, source } of part.dimensions.map((row) => ({ ...row, source: row.record.source })))
    put(record.id, `dimension ${record.name}, ${value ?? 'no value'}${source === 'drawn' ? '' : `, ${source}`}`);
  for (const { record, at } of part.stations) put(record.id, `station ${record.name}, ${at ?? 'not placed'}`);
  for (const { record, shape } of bodies) put(record.id, `body ${record.name}, ${shape}`);
  for (const [id, words] of unplaced) items.push({ id: id as RecordId, words });
  return items;
}
