import { stat } from 'node:fs/promises';

/**
 * Build files that this program has open, by device and inode.
 *
 * Trap: on POSIX systems, closing any descriptor of a file gives up all of the process's locks on it, those of SQLite
 * included; another program could then delete the log under an open build. So a file that is listed here is never
 * opened other than through SQLite.
 */
const openFiles = new Map<string, number>();

const keyOf = async (file: string): Promise<string> => {
  const { dev, ino } = await stat(file, { bigint: true });
  return `${dev}:${ino}`;
};

export const isOpenHere = async (file: string): Promise<boolean> => openFiles.has(await keyOf(file));

/** @returns a function that takes it off the list again. */
export async function listAsOpen(file: string): Promise<() => void> {
  const key = await keyOf(file);
  openFiles.set(key, (openFiles.get(key) ?? 0) + 1);
  return () => {
    const left = (openFiles.get(key) ?? 0) - 1;
    if (left > 0) openFiles.set(key, left);
    else openFiles.delete(key);
  };
}

let last: Promise<unknown> = Promise.resolve();

/** Runs one opening at a time, so that nobody looks into a file while another is about to list it. */
export function oneAtATime<T>(work: () => Promise<T>): Promise<T> {
  const turn = last.then(work, work);
  last = turn.catch(() => undefined);
  return turn;
}
