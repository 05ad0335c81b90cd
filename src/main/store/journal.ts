import { type BuildDiff, invert } from '../../shared/build/diff.ts';
import type { HistoryLabels } from '../../shared/ipc/contract.ts';
import type { JournalState, StoreExecutor } from './schema.ts';

export interface JournalEntry {
  readonly seq: number;
  readonly state: JournalState;
  readonly label: string;
  readonly diff: BuildDiff;
  readonly at: string;
}

/** The step that undo or redo would take next. */
const nextRow = (db: StoreExecutor, direction: 'undo' | 'redo') =>
  db
    .selectFrom('journal')
    .where('state', '=', direction === 'undo' ? 'done' : 'undone')
    .orderBy('seq', direction === 'undo' ? 'desc' : 'asc')
    .limit(1);

export async function readLabels(db: StoreExecutor): Promise<HistoryLabels> {
  const undo = await nextRow(db, 'undo').select('label').executeTakeFirst();
  const redo = await nextRow(db, 'redo').select('label').executeTakeFirst();
  return { undo: undo?.label, redo: redo?.label };
}

/** Adds a step that was just done; what had been undone before it can no longer be redone, but is kept. */
export async function appendStep(
  db: StoreExecutor,
  step: { readonly state: 'first' | 'done'; readonly label: string; readonly diff: BuildDiff; readonly at: string },
): Promise<void> {
  await db.updateTable('journal').set({ state: 'abandoned' }).where('state', '=', 'undone').execute();
  await db
    .insertInto('journal')
    .values({ ...step, diff: JSON.stringify(step.diff) })
    .execute();
}

/** Marks the next step as undone or done again. @returns the diff to write, or undefined when there is no such step. */
export async function turnStep(
  db: StoreExecutor,
  direction: 'undo' | 'redo',
): Promise<{ readonly label: string; readonly diff: BuildDiff } | undefined> {
  const row = await nextRow(db, direction).select(['seq', 'label', 'diff']).executeTakeFirst();
  if (!row) return undefined;
  const state = direction === 'undo' ? 'undone' : 'done';
  await db.updateTable('journal').set({ state }).where('seq', '=', row.seq).execute();
  const diff = JSON.parse(row.diff) as BuildDiff;
  return { label: row.label, diff: direction === 'undo' ? invert(diff) : diff };
}

/** The whole journal, oldest first. */
export async function readJournal(db: StoreExecutor): Promise<readonly JournalEntry[]> {
  const rows = await db.selectFrom('journal').selectAll().orderBy('seq').execute();
  return rows.map((row) => ({ ...row, diff: JSON.parse(row.diff) as BuildDiff }));
}
