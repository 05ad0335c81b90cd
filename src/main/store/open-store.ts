import path from 'node:path';
import { sql } from 'kysely';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { OpenError, ReadOnlyReason } from '../../shared/ipc/contract.ts';
import { backUpFile } from './backup.ts';
import { codeOf, openErrorOf } from './failures.ts';
import { connectStore, migrate } from './file-format.ts';
import { type Inspected, inspectFile } from './inspect-file.ts';
import { holdLock, type Lock, readHolder, takeLock } from './lock/lock-file.ts';
import type { Migration } from './migrations/migration.ts';
import { migrations as allMigrations } from './migrations/registry.ts';
import { type Moment, readBeside } from './moment.ts';
import { isOpenHere, listAsOpen, oneAtATime } from './open-here.ts';
import { copyBytes, copyLive, type PrivateCopy } from './private-copy.ts';
import type { StoreDb } from './schema.ts';
import { checkSound } from './soundness.ts';
import { type Store, storeOf } from './store.ts';

export interface OpenOptions {
  /** Open for reading alone, without lock, whatever else would be possible. */
  readonly readOnly?: boolean;
  /** Folder for backup copies: one on every opening, and one of an older file before it is brought to the newest version. */
  readonly backups?: string;
  /** Read the build already while the file is looked through: `Store.read` then answers the sooner. */
  readonly readAhead?: boolean;
  /** The clock; by default the machine's. */
  readonly now?: () => string;
  /** The versions known; by default all. */
  readonly migrations?: readonly Migration[];
}

type Settled = Required<Pick<OpenOptions, 'now' | 'migrations'>> & OpenOptions;

/**
 * Opens a build file for editing, or for reading alone when it cannot be edited now: someone has it open (`held`), or
 * file or folder do not allow writing (`file`). What is opened for reading is a private copy of this moment. A file
 * that is refused is left byte for byte as it was.
 */
export function openStore(file: string, options: OpenOptions = {}): Promise<Result<Store, OpenError>> {
  const settled: Settled = { now: () => new Date().toISOString(), migrations: allMigrations, ...options };
  const full = path.resolve(file);
  return oneAtATime(async () => {
    try {
      return await open(full, settled);
    } catch (error) {
      // By now it is known to begin like a build: what SQLite cannot read of it is damage.
      if (codeOf(error) === 'SQLITE_NOTADB')
        return err({ code: 'damaged', path: full, detail: 'Its first page is destroyed.' });
      return err(openErrorOf(error, full));
    }
  });
}

async function open(file: string, options: Settled): Promise<Result<Store, OpenError>> {
  if (await isOpenHere(file)) return openCopy(file, await copyLive(file), heldBy(await readHolder(file)), options);
  const inspected = await inspectFile(file, options.migrations.length);
  if (!inspected.ok) return inspected;
  const holder = await readHolder(file);
  if (holder) return openCopy(file, await copyOfHeld(file), heldBy(holder), options);
  if (options.readOnly || !inspected.value.writable) {
    return openCopy(file, await copyBytes(file), { why: 'file' }, options);
  }
  return openForEditing(file, inspected.value, options);
}

async function openForEditing(
  file: string,
  { hasLog, hasLogFormat }: Inspected,
  options: Settled,
): Promise<Result<Store, OpenError>> {
  // Closing a file writes its log back into it; what is damaged must be found before anything can be written.
  if (hasLog) {
    const fault = await checkCopy(file, options);
    if (fault) return err(fault);
  }
  const unlist = await listAsOpen(file);
  let release: () => Promise<void> = async () => unlist();
  let db: StoreDb | undefined;
  let ahead: Promise<Moment | undefined> | undefined;
  const giveUp = async () => {
    try {
      await ahead;
      await db?.destroy();
    } finally {
      await release();
    }
  };
  try {
    db = (await connectStore(file, 'write')).db;
    const taken = await takeLockUnderWriteLock(db, file, options.now());
    if (taken === 'no-room' || 'holder' in taken) {
      await giveUp();
      if (taken === 'no-room') return openCopy(file, await copyBytes(file), { why: 'file' }, options);
      return openCopy(file, await copyOfHeld(file), heldBy(taken.holder), options);
    }
    const giveBack = holdLock(file, taken.token);
    release = async () => {
      unlist();
      await giveBack();
    };
    // Changing to the log's format waits for every reader.
    if (options.readAhead === true && hasLogFormat) ahead = readBeside(file);
    const sound = await checkSound(db, file, options.migrations);
    if (!sound.ok) {
      await giveUp();
      return sound;
    }
    await sql`pragma journal_mode = wal`.execute(db);
    if (sound.value < options.migrations.length) {
      await ahead;
      ahead = undefined;
      await upgrade(db, file, options);
    }
    return ok(
      storeOf({
        path: file,
        source: file,
        db,
        readOnly: undefined,
        backups: options.backups,
        now: options.now,
        ahead,
        release,
      }),
    );
  } catch (error) {
    await giveUp();
    throw error;
  }
}

/** SQLite's write lock makes sure that of two programs that find the same dead lock only one takes it over. */
async function takeLockUnderWriteLock(
  db: StoreDb,
  file: string,
  since: string,
): Promise<{ token: string } | { holder: Lock } | 'no-room'> {
  try {
    return await db.transaction().execute(() => takeLock(file, since));
  } catch (error) {
    if (['ENOSPC', 'EDQUOT', 'EACCES', 'EPERM', 'EROFS', 'SQLITE_READONLY'].includes(codeOf(error))) return 'no-room';
    throw error;
  }
}

/** Brings an older file up; a copy of it as it was is kept if there is a place for copies. */
async function upgrade(db: StoreDb, file: string, { backups, migrations, now }: Settled): Promise<void> {
  if (backups !== undefined) await backUpFile(file, backups, now());
  await migrate(db, migrations);
  // Into the file itself at once: an older program looks at the version in its header.
  await sql`pragma wal_checkpoint(truncate)`.execute(db);
}

async function openCopy(
  file: string,
  copy: PrivateCopy,
  readOnly: ReadOnlyReason,
  { migrations, now }: Settled,
): Promise<Result<Store, OpenError>> {
  let db: StoreDb | undefined;
  try {
    db = (await connectStore(copy.path, 'write')).db;
    const sound = await checkSound(db, file, migrations);
    if (sound.ok) {
      await migrate(db, migrations);
      return ok(
        storeOf({ path: file, source: copy.path, db, readOnly, backups: undefined, now, release: copy.remove }),
      );
    }
    await db.destroy();
    await copy.remove();
    return sound;
  } catch (error) {
    await db?.destroy();
    await copy.remove();
    throw error;
  }
}

/** @returns what is wrong with the file, found out on a copy; undefined when it is sound. */
async function checkCopy(file: string, options: Settled): Promise<OpenError | undefined> {
  const opened = await openCopy(file, await copyBytes(file), { why: 'file' }, options);
  if (!opened.ok) return opened.error;
  await opened.value.close();
  return undefined;
}

/** Where the folder does not let SQLite read beside a writer (another machine's disk), the bytes must do. */
const copyOfHeld = (file: string): Promise<PrivateCopy> => copyLive(file).catch(() => copyBytes(file));

const heldBy = (holder: Lock | undefined): ReadOnlyReason =>
  holder ? { why: 'held', by: `${holder.user} on ${holder.host}`, since: holder.since } : { why: 'file' };
