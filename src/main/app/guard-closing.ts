import { setTimeout as pause } from 'node:timers/promises';
import { app } from 'electron';
import { commitWords, type Words } from '../files/open-words.ts';
import { type BuildWindow, isSaving } from './build-window.ts';
import { waitToClose } from './closing.ts';
import { askUser } from './dialogs.ts';
import { nameOf } from './windows.ts';

/** Set while the program as a whole is being ended; a window that stays open ends the ending. */
let quitting = false;

/** Must run once, before the first window. */
export function noticeQuitting(): void {
  app.on('before-quit', () => {
    quitting = true;
  });
}

/** Lets a window go only when its last edit is on disk and its file is closed, or the user gave the edit up. */
export function guardClosing(window: BuildWindow): void {
  let closing = false;
  window.window.on('close', (event) => {
    if (window.mayClose) return;
    event.preventDefault();
    if (closing) return;
    closing = true;
    letGo(window)
      .catch((error: unknown) => {
        console.error('Closing a build did not go as it should:', error);
        return true;
      })
      .then((gone) => {
        closing = false;
        if (!gone) {
          quitting = false;
          return;
        }
        window.mayClose = true;
        if (!window.window.isDestroyed()) window.window.close();
        if (quitting) app.quit();
      });
  });
}

async function letGo(window: BuildWindow): Promise<boolean> {
  await window.busy;
  const may = await waitToClose({
    isSaving: () => window.build !== undefined && isSaving(window) && !window.window.webContents.isCrashed(),
    failure: () => window.failed,
    pause: (ms) => pause(ms),
    askToLose: async (failure) => {
      const build = window.build;
      if (build === undefined) return true;
      const why: Words =
        failure === undefined
          ? { message: '', detail: 'Its disk does not answer. Check that it is connected.' }
          : commitWords(failure, build.path);
      const words = {
        message: `The last edit of “${nameOf(build.path)}” is not on disk.`,
        detail: `${why.detail} Closing now loses that edit and no other.`,
      };
      return (await askUser(window, 'warning', words, ['Keep Open', 'Close and Lose the Edit'], 0)) === 1;
    },
  });
  if (!may) return false;
  const build = window.build;
  window.build = undefined;
  await build?.store.close();
  return true;
}
