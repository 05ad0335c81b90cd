import type { CommitError } from '../../shared/ipc/contract.ts';

/** The code of a file system's error, or undefined for any other thrown thing. */
const codeOf = (error: unknown): string | undefined =>
  typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string'
    ? error.code
    : undefined;

const inWords: Readonly<Record<string, string>> = {
  EACCES: 'you have no right to do that there',
  EPERM: 'you have no right to do that there',
  EROFS: 'the disk can only be read',
  ENOENT: 'the folder is not there',
  ENOTDIR: 'a part of the path is not a folder',
  EISDIR: 'there is a folder of that name',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program holds it',
  EIO: 'the disk reports a fault',
};

/** Says in words what the file system refused. */
export const troubleInWords = (error: unknown): string =>
  inWords[codeOf(error) ?? ''] ?? (error instanceof Error ? error.message : String(error));

/** Sorts a failed write: a full disk has its own remedy. */
export function writeTrouble(error: unknown): CommitError {
  const code = codeOf(error);
  return code === 'ENOSPC' || code === 'EDQUOT'
    ? { code: 'disk-full' }
    : { code: 'unwritable', detail: troubleInWords(error) };
}
