import { randomBytes } from 'node:crypto';
import { readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { hostname, userInfo } from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { codeOf } from '../failures.ts';
import { isRunning, startOf } from './process-identity.ts';

/** What the lock beside an open build says of the program that holds it. */
const lockSchema = z.object({
  host: z.string().max(300),
  pid: z.number().int().positive(),
  /** See `startOf`; absent where the system does not tell. */
  started: z.string().max(200).optional(),
  user: z.string().max(300),
  /** When the build was opened, ISO 8601, UTC. */
  since: z.string().max(40),
  /** Names this one opening: a lock is given back only by the one who took it. */
  token: z.string().max(64),
});
export type Lock = Readonly<z.infer<typeof lockSchema>>;

/** A holder shows every minute that it is alive; one on another machine that has not for ten is taken for gone. */
const BEAT_MS = 60_000;
const SILENT_MS = 10 * BEAT_MS;

export const lockPath = (file: string): string => path.join(path.dirname(file), `.${path.basename(file)}.lock`);

/** @returns who holds the file now; undefined when nobody does, or only a program that is no longer running. */
export async function readHolder(file: string): Promise<Lock | undefined> {
  const lock = await readLock(lockPath(file));
  return lock && (await isAlive(lock, lockPath(file))) ? lock : undefined;
}

/**
 * Takes the lock, over a dead holder's if need be. To be called by one program at a time (under SQLite's write lock,
 * which the system itself gives back when a program dies); exclusive creation covers disks that know no such locks.
 * @returns the token to give it back with, or the lock of the one who has it.
 * @throws the file system's error when the lock cannot be written.
 */
export async function takeLock(file: string, since: string): Promise<{ token: string } | { holder: Lock }> {
  const place = lockPath(file);
  const holder = await readHolder(file);
  if (holder) return { holder };
  await rm(place, { force: true });
  const token = randomBytes(12).toString('hex');
  const started = await startOf(process.pid);
  const lock: Lock = {
    host: hostname(),
    pid: process.pid,
    user: userName(),
    since,
    token,
    ...(started && { started }),
  };
  try {
    await writeFile(place, JSON.stringify(lock), { flag: 'wx' });
    return { token };
  } catch (error) {
    const other = codeOf(error) === 'EEXIST' ? await readLock(place) : undefined;
    if (other) return { holder: other };
    throw error;
  }
}

/** Shows now and then that the holder is alive. @returns a function that stops it and gives the lock back. */
export function holdLock(file: string, token: string): () => Promise<void> {
  const place = lockPath(file);
  const beat = setInterval(() => {
    const now = new Date();
    utimes(place, now, now).catch(() => undefined);
  }, BEAT_MS);
  beat.unref();
  return async () => {
    clearInterval(beat);
    const lock = await readLock(place);
    if (lock?.token === token) await rm(place, { force: true });
  };
}

async function readLock(place: string): Promise<Lock | undefined> {
  try {
    return lockSchema.parse(JSON.parse(await readFile(place, 'utf8')));
  } catch (error) {
    // Half a lock is one whose writer died over it.
    if (error instanceof SyntaxError || error instanceof z.ZodError || codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

async function isAlive(lock: Lock, place: string): Promise<boolean> {
  if (lock.host !== hostname()) return Date.now() - (await stat(place)).mtimeMs < SILENT_MS;
  if (!isRunning(lock.pid)) return false;
  const started = await startOf(lock.pid);
  // Where the system does not tell, a running process of that number counts as the holder.
  return started === undefined || lock.started === undefined || started === lock.started;
}

function userName(): string {
  try {
    return userInfo().username;
  } catch {
    // A user without an entry in the system's list, as in some containers.
    return 'someone';
  }
}
