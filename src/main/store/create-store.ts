import { sql } from 'kysely';
import { err, type Result } from '../../shared/base/result.ts';
import { type BuildDiff, emptyDiff } from '../../shared/build/diff.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import type { CommitError } from '../../shared/ipc/contract.ts';
import { assertSound, findUnwritable, writeDiff } from './document.ts';
import { connectStore, migrate } from './file-format.ts';
import { appendStep } from './journal.ts';
import { migrations } from './migrations/registry.ts';
import { writeNewFile } from './new-file.ts';
import type { StoreDb } from './schema.ts';

export interface CreateOptions {
  /** Replace a file that is there already. It must not be open anywhere; the caller has asked the user. */
  readonly replace?: boolean;
  readonly now?: () => string;
  /** What else to write before the file appears: used when a build is recovered together with its history. */
  readonly fill?: (db: StoreDb) => Promise<void>;
}

/**
 * Makes a build file that holds the given records, complete or not at all: it is written beside its place under another
 * name and moved there when it is on disk. Open it with `openStore`.
 * @returns `unwritable` when there is a file already and `replace` is not given.
 * @throws BugError when the records do not make a build (a reference to nothing, a record that fits no schema).
 */
export async function createStore(
  file: string,
  records: readonly BuildRecord[],
  { replace = false, now = () => new Date().toISOString(), fill }: CreateOptions = {},
): Promise<Result<undefined, CommitError>> {
  const first: BuildDiff = { ...emptyDiff, added: records };
  assertSound(first);
  const unwritable = findUnwritable(first);
  if (unwritable !== undefined) return err({ code: 'unwritable', detail: unwritable });
  return writeNewFile(file, replace, (beside) => writeNew(beside, first, now(), fill));
}

async function writeNew(file: string, first: BuildDiff, at: string, fill: CreateOptions['fill']): Promise<void> {
  const { db } = await connectStore(file, 'create');
  try {
    await migrate(db, migrations);
    await db.transaction().execute(async (tx) => {
      await tx.insertInto('meta').values({ id: 1, revision: 0, created_at: at }).execute();
      await writeDiff(tx, first);
      await appendStep(tx, { state: 'first', label: '', diff: first, at });
    });
    await fill?.(db);
    await sql`pragma journal_mode = wal`.execute(db);
  } finally {
    await db.destroy();
  }
}
