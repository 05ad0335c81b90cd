import path from 'node:path';
import { app, BrowserWindow, session } from 'electron';
import { spareMissingGraphics } from './graphics.ts';
import { nothingToOpen, type OpenRequest, readLaunch } from './launch.ts';
import { registerScheme, serveWindow } from './protocol.ts';
import { enableSandbox, hardenEveryPage, hardenSession } from './security.ts';
import type { Shell } from './shell.ts';

/** The data folder can be chosen, for tests above all; Electron must know before it locks or reads anything in it. */
function chooseDataFolder(): void {
  const chosen = process.env.WAYWRIGHT_USER_DATA ?? app.commandLine.getSwitchValue('user-data-dir');
  if (chosen !== '') app.setPath('userData', path.resolve(chosen));
}

const isOpenRequest = (value: unknown): value is OpenRequest =>
  typeof value === 'object' && value !== null && 'files' in value && Array.isArray(value.files);

/** Closing waits until the shell has put everything on disk, once. */
function endWith(shell: Shell): void {
  let ended = false;
  app.on('will-quit', (event) => {
    if (ended) return;
    event.preventDefault();
    shell.end().then(
      () => {
        ended = true;
        // Not within this event: Electron would still count the first attempt as under way and ignore the second.
        setImmediate(() => app.quit());
      },
      (error: unknown) => {
        console.error('Closing did not go as it should:', error);
        app.exit(1);
      },
    );
  });
}

/**
 * Starts the program: one instance, a hardened session, the window's own protocol, then the shell.
 * A top-level `await app.whenReady()` would never end in an ES module, so nothing here is awaited by the caller.
 */
export function start(shell: Shell): void {
  chooseDataFolder();
  const program = process.defaultApp ? app.getAppPath() : undefined;
  const request = readLaunch(process.argv.slice(1), program, process.cwd());
  if (!app.requestSingleInstanceLock({ ...request })) {
    app.quit();
    return;
  }
  enableSandbox();
  spareMissingGraphics();
  registerScheme();
  hardenEveryPage();

  // macOS names the double-clicked file in an event that may come before ready.
  const early: string[] = [];
  let isUp = false;
  const open = (what: OpenRequest): void => {
    shell.open(what).catch((error: unknown) => console.error('Opening failed:', error));
  };
  app.on('open-file', (event, file) => {
    event.preventDefault();
    if (isUp) open({ ...nothingToOpen, files: [file] });
    else early.push(file);
  });
  app.on('second-instance', (_event, _argv, _folder, asked) => open(isOpenRequest(asked) ? asked : nothingToOpen));
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  app.on('activate', () => {
    if (isUp && BrowserWindow.getAllWindows().length === 0) open(nothingToOpen);
  });
  endWith(shell);

  void app.whenReady().then(async () => {
    hardenSession(session.defaultSession);
    serveWindow(path.join(app.getAppPath(), 'out', 'renderer'));
    await shell.begin();
    isUp = true;
    open({ ...request, files: [...request.files, ...early] });
  });
}
