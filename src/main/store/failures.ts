import { statfs } from 'node:fs/promises';
import path from 'node:path';
import { BugError } from '../../shared/base/assert.ts';
import type { CommitError, OpenError } from '../../shared/ipc/contract.ts';

/** The code of a driver's or a file system's error, such as `SQLITE_FULL` or `ENOSPC`; empty when it has none. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Below this a page or a shared-memory block no longer finds room. */
const FULL_BYTES = 64 * 1024;

/** Whether the disk that holds `file` has no room for another page. */
async function isFull(file: string): Promise<boolean> {
  const room = await statfs(path.dirname(file)).catch(() => undefined);
  return room !== undefined && room.bavail * room.bsize < FULL_BYTES;
}

/**
 * @returns what a failed write means to the user.
 * @throws BugError when the program, not the machine, broke a promise: a reference, a check, a wrong statement.
 */
export async function commitErrorOf(error: unknown, file: string): Promise<CommitError> {
  const code = codeOf(error);
  const detail = messageOf(error);
  switch (code) {
    case 'SQLITE_FULL':
    case 'ENOSPC':
    case 'EDQUOT':
      return { code: 'disk-full' };
    case 'SQLITE_READONLY':
    case 'EROFS':
      return { code: 'unwritable', detail: `The file no longer allows writing (${detail}).` };
    case 'SQLITE_BUSY':
    case 'SQLITE_LOCKED':
      return { code: 'unwritable', detail: `Another program is writing to the file (${detail}). Try again.` };
    case 'SQLITE_IOERR':
    case 'SQLITE_CANTOPEN':
      // The last block of the disk shows as an I/O error when it is the shared memory that does not fit.
      return (await isFull(file)) ? { code: 'disk-full' } : { code: 'unwritable', detail };
    case 'SQLITE_CORRUPT':
    case 'SQLITE_NOTADB':
      return { code: 'unwritable', detail: `The file is damaged (${detail}). Open it again to recover it.` };
    case 'SQLITE_CONSTRAINT':
      throw new BugError(`The edit breaks a rule of the file and was not kept: ${detail}`);
    default:
      if (/^E[A-Z]+$/.test(code)) return { code: 'unwritable', detail };
      throw error;
  }
}

/** @returns what a failed reading means to the user. @throws what is not a failure of file or disk. */
export function openErrorOf(error: unknown, file: string): OpenError {
  const code = codeOf(error);
  const detail = messageOf(error);
  switch (code) {
    case 'ENOENT':
      return { code: 'not-found', path: file };
    case 'SQLITE_NOTADB':
      return { code: 'not-a-build', path: file };
    case 'SQLITE_CORRUPT':
      return { code: 'damaged', path: file, detail };
    default:
      if (/^(E[A-Z]+|SQLITE_[A-Z]+)$/.test(code)) return { code: 'unreadable', path: file, detail };
      throw error;
  }
}
