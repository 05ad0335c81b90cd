import { z } from 'zod';
import { type BuildDiff, emptyDiff } from '../../../shared/build/diff.ts';
import { recordSchema } from '../../../shared/build/kinds.ts';
import type { Build, BuildRecord, RecordId } from '../../../shared/build/records.ts';
import type { JournalEntry } from '../journal.ts';
import type { ReadRows } from './read-rows.ts';

const entrySchema: z.ZodType<JournalEntry> = z.strictObject({
  seq: z.number().int().positive(),
  state: z.enum(['first', 'done', 'undone', 'abandoned']),
  label: z.string(),
  diff: z.strictObject({
    added: z.array(recordSchema),
    updated: z.array(z.tuple([recordSchema, recordSchema])),
    removed: z.array(recordSchema),
  }),
  at: z.string(),
});

export interface Replayed {
  /** The document as far as the journal can be followed from its beginning. */
  readonly build: Build;
  /** The rows followed. */
  readonly entries: readonly JournalEntry[];
  /** Whether that is all of it: then the document is the last one that was saved. */
  readonly complete: boolean;
}

/** Builds the document anew out of the journal, up to the first row that is missing or unreadable. */
export function replay({ rows, whole }: ReadRows): Replayed {
  const entries: JournalEntry[] = [];
  const build = new Map<RecordId, BuildRecord>();
  for (const raw of rows) {
    const parsed = entrySchema.safeParse(raw);
    if (!parsed.success || parsed.data.seq !== entries.length + 1) break;
    const entry = parsed.data;
    if ((entry.state === 'first') !== (entry.seq === 1)) break;
    entries.push(entry);
    follow(build, entry.state === 'first' || entry.state === 'done' ? entry.diff : emptyDiff);
  }
  return { build, entries, complete: whole && rows.length > 0 && entries.length === rows.length };
}

function follow(build: Map<RecordId, BuildRecord>, { removed, added, updated }: BuildDiff): void {
  for (const { id } of removed) build.delete(id);
  for (const record of added) build.set(record.id, record);
  for (const [, to] of updated) build.set(to.id, to);
}
