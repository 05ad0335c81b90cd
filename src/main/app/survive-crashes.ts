import { type BuildWindow, emptyReport } from './build-window.ts';
import { askUser } from './dialogs.ts';

/** A page that died is begun anew: the document is on disk, so nothing accepted is lost. */
export function surviveCrashes(window: BuildWindow): void {
  window.window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || window.mayClose || window.window.isDestroyed()) return;
    window.told = false;
    window.report = { ...emptyReport, hasBuild: window.report.hasBuild, readOnly: window.report.readOnly };
    const words = {
      message: 'The window stopped working.',
      detail: `Everything that was saved is on disk (${reason}). Load the window again to go on.`,
    };
    askUser(window, 'error', words, ['Load Again', 'Close'])
      .then((choice) => {
        if (window.window.isDestroyed()) return;
        if (choice === 0) window.window.webContents.reload();
        else window.window.close();
      })
      .catch((error: unknown) => console.error(error));
  });
}
