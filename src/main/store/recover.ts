import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { recordSchema } from '../../shared/build/kinds.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import type { CommitError, OpenError } from '../../shared/ipc/contract.ts';
import { createStore } from './create-store.ts';
import { openErrorOf } from './failures.ts';
import type { JournalEntry } from './journal.ts';
import { isOpenHere } from './open-here.ts';
import { copyBytes } from './private-copy.ts';
import { type Loss, pieceTogether } from './salvage/piece-together.ts';
import { type Replayed, replay } from './salvage/replay.ts';
import { type Salvage, salvage } from './salvage/salvage.ts';
import type { DrawingIssueRow, StoreDb } from './schema.ts';

export type { Loss } from './salvage/piece-together.ts';

export interface Recovery {
  /** How many records the new file holds. */
  readonly records: number;
  /** Whether undo and redo go on where they stood. */
  readonly historyKept: boolean;
  readonly lost: readonly Loss[];
}

/**
 * Reads what can be read of a damaged build, row by row, fills gaps from its journal, and writes a new, sound file. The
 * damaged one is only ever read.
 * @returns `damaged` when nothing at all could be read; `unwritable` when there is something at `newFile` already.
 */
export async function recover(
  file: string,
  newFile: string,
  { now = () => new Date().toISOString() }: { readonly now?: () => string } = {},
): Promise<Result<Recovery, OpenError | CommitError>> {
  const full = path.resolve(file);
  try {
    if (await isOpenHere(full)) return err({ code: 'unreadable', path: full, detail: 'It is open in this program.' });
    const copy = await copyBytes(full);
    try {
      return await rebuild(await salvage(copy.path), full, newFile, now);
    } finally {
      await copy.remove();
    }
  } catch (error) {
    return err(openErrorOf(error, full));
  }
}

async function rebuild(
  salvaged: Salvage,
  file: string,
  newFile: string,
  now: () => string,
): Promise<Result<Recovery, OpenError | CommitError>> {
  const replayed = replay(salvaged.journal);
  const { records, lost: lostRecords } = pieceTogether(salvaged, replayed, path.parse(file).name);
  // The settings alone may be those that stand in.
  const isEmpty = records.length === 1 && salvaged.records.settings.rows.length === 0 && replayed.build.size === 0;
  if (isEmpty) return err({ code: 'damaged', path: file, detail: 'Nothing of it could be read.' });

  const { issues, lost: lostIssues } = readIssues(salvaged);
  const historyKept = replayed.complete && sameDocument(records, replayed);
  const lost = [...lostRecords, ...lostIssues];
  if (!historyKept) lost.push({ kind: 'history', what: 'The list of earlier steps is lost: undo begins anew.' });

  const revision = readRevision(salvaged, replayed);
  const written = await createStore(newFile, records, {
    now,
    fill: async (db) => {
      if (historyKept) await writeHistory(db, replayed.entries, revision);
      if (issues.length > 0)
        await db
          .insertInto('drawing_issue')
          .values([...issues])
          .execute();
    },
  });
  return written.ok ? ok({ records: records.length, historyKept, lost }) : written;
}

function sameDocument(records: readonly BuildRecord[], { build }: Replayed): boolean {
  return records.length === build.size && records.every((record) => isDeepStrictEqual(build.get(record.id), record));
}

const metaSchema = z.object({ revision: z.number().int().min(0) });

function readRevision({ meta }: Salvage, { entries }: Replayed): number {
  const parsed = metaSchema.safeParse(meta.rows[0]);
  return parsed.success ? parsed.data.revision : entries.length;
}

const issueSchema = z.object({
  letter: z.string().min(1),
  title: z.string(),
  note: z.string(),
  issued_at: z.string(),
  revision: z.number().int(),
  content: z.array(recordSchema),
});

function readIssues({ issues: { rows, whole } }: Salvage): {
  issues: readonly DrawingIssueRow[];
  lost: readonly Loss[];
} {
  const lost: Loss[] = [];
  const issues: DrawingIssueRow[] = [];
  for (const raw of rows) {
    const parsed = issueSchema.safeParse(raw);
    if (parsed.success) issues.push({ ...parsed.data, content: JSON.stringify(parsed.data.content) });
    else {
      const letter = String((raw as { letter?: unknown }).letter);
      lost.push({ kind: 'issue', what: `Drawing issue ${letter} is not as expected and was left out.` });
    }
  }
  if (!whole) lost.push({ kind: 'issue', what: 'Some of the drawing issues, if there were any, could not be read.' });
  return { issues, lost };
}

/** In place of the one first entry of a new file. */
async function writeHistory(db: StoreDb, entries: readonly JournalEntry[], revision: number): Promise<void> {
  await db.transaction().execute(async (tx) => {
    await tx.deleteFrom('journal').execute();
    for (const entry of entries) {
      await tx
        .insertInto('journal')
        .values({ ...entry, diff: JSON.stringify(entry.diff) })
        .execute();
    }
    await tx.updateTable('meta').set({ revision }).execute();
  });
}
