import type { CommitError } from '../../shared/ipc/contract.ts';

export interface Closing {
  /** An edit is on its way to the disk. */
  isSaving(): boolean;
  /** Why the last edit is not on disk. */
  failure(): CommitError | undefined;
  /** Asks the user; true = close although the last edit is not on disk. `undefined` = it is still being written. */
  askToLose(failure: CommitError | undefined): Promise<boolean>;
  pause(milliseconds: number): Promise<void>;
}

const LOOK_EVERY_MS = 20;
/** A commit takes some ten milliseconds; a disk that needs longer than this is asleep or failing. */
export const PATIENCE_MS = 5_000;

/**
 * Waits until the last edit is on disk. When it cannot be put there the user decides.
 * @returns whether the window may close
 */
export async function waitToClose(closing: Closing): Promise<boolean> {
  for (let waited = 0; ; waited += LOOK_EVERY_MS) {
    const failure = closing.failure();
    if (failure !== undefined) return closing.askToLose(failure);
    if (!closing.isSaving()) return true;
    if (waited >= PATIENCE_MS) return closing.askToLose(undefined);
    await closing.pause(LOOK_EVERY_MS);
  }
}
