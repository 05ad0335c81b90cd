import { randomBytes } from 'node:crypto';
import { access, link, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { CommitError } from '../../shared/ipc/contract.ts';
import { codeOf, commitErrorOf } from './failures.ts';
import { readHolder } from './lock/lock-file.ts';

/** What SQLite may leave beside a database. */
const BESIDE = ['-wal', '-shm', '-journal'];

/**
 * Makes a database file complete or not at all: `write` fills one under another name in the same folder, which is moved
 * into place when it is on disk.
 * @returns `unwritable` when a file is there and is not to be replaced, or is open somewhere.
 */
export async function writeNewFile(
  file: string,
  replace: boolean,
  write: (beside: string) => Promise<void>,
): Promise<Result<undefined, CommitError>> {
  const beside = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.part`);
  try {
    if (await exists(file)) {
      if (!replace) return err(taken(file));
      const holder = await readHolder(file);
      if (holder) return err(inUse(file, `${holder.user} on ${holder.host}`));
    }
    await write(beside);
    await moveIntoPlace(beside, file, replace);
    return ok(undefined);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return err(taken(file));
    return err(await commitErrorOf(error, file));
  } finally {
    for (const ending of ['', ...BESIDE]) await rm(beside + ending, { force: true }).catch(() => undefined);
  }
}

/** Sees to it that the bytes of a closed file are on the disk. @throws the file system's error. */
export async function syncFile(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function moveIntoPlace(from: string, to: string, replace: boolean): Promise<void> {
  await syncFile(from);
  // A leftover log of a file that once stood here would be played into the new one: SQLite does not tell them apart.
  for (const ending of BESIDE) await rm(to + ending, { force: true });
  if (replace) return rename(from, to);
  try {
    // A link, unlike a rename, never replaces a file that came to be in the meantime.
    await link(from, to);
  } catch (error) {
    // Memory sticks and some network folders know no links.
    if (codeOf(error) === 'EEXIST' || (await exists(to))) throw error;
    await rename(from, to);
  }
}

const taken = (file: string): CommitError => ({
  code: 'unwritable',
  detail: `${path.basename(file)} is there already. Choose another name.`,
});

const inUse = (file: string, by: string): CommitError => ({
  code: 'unwritable',
  detail: `${path.basename(file)} is open (${by}). Close it there, or choose another name.`,
});

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );
