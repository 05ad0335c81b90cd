import path from 'node:path';
import { sql } from 'kysely';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { OpenError } from '../../shared/ipc/contract.ts';
import { openErrorOf } from './failures.ts';
import { connectStore } from './file-format.ts';
import { type Store, storeOf } from './store.ts';

export interface OpenOptions {
  /** The clock; by default the machine's. */
  readonly now?: () => string;
}

/** Opens a build file for editing, or for reading alone when it cannot be edited now. */
export async function openStore(
  file: string,
  { now = () => new Date().toISOString() }: OpenOptions = {},
): Promise<Result<Store, OpenError>> {
  const full = path.resolve(file);
  try {
    const { db } = await connectStore(full, 'write');
    await sql`pragma journal_mode = wal`.execute(db);
    return ok(storeOf({ path: full, db, readOnly: undefined, now, release: async () => {} }));
  } catch (error) {
    return err(openErrorOf(error, full));
  }
}
