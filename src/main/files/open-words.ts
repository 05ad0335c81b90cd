import path from 'node:path';
import { unreachable } from '../../shared/base/assert.ts';
import type { CommitError, OpenError } from '../../shared/ipc/contract.ts';

/** What a message box says: what is wrong and where, then what to do. */
export interface Words {
  readonly message: string;
  readonly detail: string;
}

const named = (file: string): string => `“${path.basename(file)}”`;

/** Says why a file could not be opened. */
export function openWords(error: OpenError): Words {
  const name = named(error.path);
  switch (error.code) {
    case 'not-found':
      return {
        message: `${name} is not there.`,
        detail: `There is no file at ${error.path}. If it is on a stick or another disk, connect it and open the build again; if it was moved, find it with File ▸ Open….`,
      };
    case 'not-a-build':
      return {
        message: `${name} is not a build.`,
        detail: `${error.path} holds something else and was not changed. Build files end in .wayw; File ▸ New Build… makes one, and a build in JSON form can be opened or imported.`,
      };
    case 'newer-version':
      return {
        message: `${name} was made by a newer version of Waywright.`,
        detail: `The file has form ${error.version}; this version reads forms up to ${error.newest}. It was not changed. Open it with the newer version, or export it there as JSON.`,
      };
    case 'damaged':
      return {
        message: `${name} is damaged.`,
        detail: `Part of it cannot be read (${error.detail}). What is whole can be read into a new file beside it; the damaged file stays as it is.`,
      };
    case 'unreadable':
      return {
        message: `${name} could not be read.`,
        detail: `${error.path}: ${error.detail}. Check that its disk is connected and that you may read it, then open it again.`,
      };
    default:
      return unreachable(error);
  }
}

/**
 * Says why something could not be put on disk.
 * @param file where it was to go
 */
export function commitWords(error: CommitError, file: string): Words {
  const name = named(file);
  switch (error.code) {
    case 'disk-full':
      return {
        message: `There is no room left on the disk of ${name}.`,
        detail: `${path.dirname(file)} is full. Make room there, then try again. What was on disk before is whole.`,
      };
    case 'unwritable':
      return {
        message: `${name} could not be written.`,
        detail: `${file}: ${error.detail}. Check that its disk is connected and that you may write there, then try again.`,
      };
    case 'read-only':
      return {
        message: `${name} can only be read.`,
        detail: 'Make an editable copy with File ▸ Save a Copy….',
      };
    case 'stale-revision':
      return {
        message: `${name} has moved on.`,
        detail: 'It was changed elsewhere since this window read it. Close the window and open the build again.',
      };
    case 'nothing-to-step':
      return { message: 'There is no step to take.', detail: 'Nothing was changed.' };
    default:
      return unreachable(error);
  }
}
