import { copyFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { connect } from './connection.ts';
import { codeOf } from './failures.ts';

/** A copy of a build that is ours alone; whatever is done to it, the original does not feel it. */
export interface PrivateCopy {
  readonly path: string;
  remove(): Promise<void>;
}

/**
 * Copies through SQLite: one consistent moment even while another program writes. Needs a file that is whole.
 * @throws the driver's error.
 */
export const copyLive = (file: string): Promise<PrivateCopy> => inOwnFolder(file, (copy) => vacuumInto(file, copy));

/**
 * Copies the bytes of the file and of the log beside it. For files that nobody writes; the copy may be damaged just as
 * the original is. Never for a file that this program has open (see `open-here.ts`).
 * @throws the file system's error.
 */
export const copyBytes = (file: string): Promise<PrivateCopy> =>
  inOwnFolder(file, async (copy) => {
    await copyFile(file, copy);
    await copyFile(`${file}-wal`, `${copy}-wal`).catch((error: unknown) => {
      if (codeOf(error) !== 'ENOENT') throw error;
    });
  });

/** Writes a compact, consistent copy to a path where there is no file yet. @throws the driver's error. */
export async function vacuumInto(file: string, copy: string): Promise<void> {
  const source = await connect(file, 'read', true);
  try {
    await source.run('vacuum into ?', [copy]);
  } finally {
    await source.close();
  }
}

async function inOwnFolder(file: string, fill: (copy: string) => Promise<void>): Promise<PrivateCopy> {
  const folder = await mkdtemp(path.join(tmpdir(), 'waywright-'));
  const copy = path.join(folder, path.basename(file));
  const remove = () => rm(folder, { recursive: true, force: true });
  try {
    await fill(copy);
    return { path: copy, remove };
  } catch (error) {
    await remove();
    throw error;
  }
}
