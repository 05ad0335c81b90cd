import { readFileSync } from 'node:fs';
import path from 'node:path';
import { app, dialog, ipcMain, nativeTheme, shell as system } from 'electron';
import type { MenuAction, Preferences } from '../../shared/ipc/contract.ts';
import { openKeptViews } from '../files/kept-views.ts';
import { places as keepPlaces } from '../files/places.ts';
import { openRecentFiles } from '../files/recent-files.ts';
import { registerHandlers } from '../ipc/register-handlers.ts';
import type { MenuCommands, MenuState } from '../menu/menu-state.ts';
import { keepMenu } from '../menu/show-menu.ts';
import { openPreferences } from '../preferences/preferences.ts';
import { openShop } from '../shop/open-shop.ts';
import { askOpen, askUser, filters } from './dialogs.ts';
import { openExample, resetExample } from './examples.ts';
import { guardClosing, noticeQuitting } from './guard-closing.ts';
import type { OpenRequest } from './launch.ts';
import { newBuild, saveCopy } from './new-and-copy.ts';
import { opening as openingOf } from './opening.ts';
import type { Shell } from './shell.ts';
import { surviveCrashes } from './survive-crashes.ts';
import { keepWindows, tell } from './windows.ts';

const resources = (): string =>
  app.isPackaged ? path.join(process.resourcesPath, 'resources') : path.join(app.getAppPath(), 'resources');

const platform = process.platform === 'darwin' || process.platform === 'win32' ? process.platform : 'linux';

/** The page names its script, and each script those that it starts, by what is in them: another engine, another text. */
const engineOf = (): string =>
  `${app.getVersion()}\n${readFileSync(path.join(app.getAppPath(), 'out', 'renderer', 'index.html'), 'utf8')}`;

/** Failing to remember a preference is no reason to disturb anyone; it is left in the log. */
const note = (error: unknown): void => console.error('Something could not be remembered:', error);

/** Runs what a menu item set going. What it throws is a bug; the user learns of it and the program goes on. */
function inBackground(work: Promise<unknown>): void {
  work.catch((error: unknown) => {
    console.error(error);
    dialog.showErrorBox('Something went wrong in Waywright', error instanceof Error ? error.message : String(error));
  });
}

/** Puts the parts of the shell together: windows, menus, files, preferences, and the answers to the windows. */
export function createShell(): Shell {
  let refreshMenu = (): void => {};
  let waitForFiles = async (): Promise<void> => {};
  let openRequested = async (_request: OpenRequest): Promise<void> => {};

  return {
    async begin() {
      noticeQuitting();
      const dataFolder = app.getPath('userData');
      const preferences = openPreferences(dataFolder, note);
      const recent = openRecentFiles(dataFolder, () => refreshMenu(), note);
      const kept = openKeptViews(dataFolder, engineOf, note);
      const places = keepPlaces(dataFolder, resources(), app.getPath('documents'), note);
      const windows = keepWindows(
        () => refreshMenu(),
        (window) => {
          guardClosing(window);
          surviveCrashes(window);
        },
      );
      const opening = openingOf({ windows, recent, places, onRecent: (file) => app.addRecentDocument(file) });
      const shop = openShop(dataFolder, {
        onChange: (content) => {
          for (const window of windows.all()) tell(window, 'shop:changed', content);
        },
      });
      const needs = { windows, places, opening, shop };
      nativeTheme.themeSource = preferences.get().theme;

      const setPreferences = (next: Preferences): void => {
        preferences.set(next);
        nativeTheme.themeSource = next.theme;
        for (const window of windows.all()) tell(window, 'preferences:changed', next);
        refreshMenu();
      };
      const openWithDialog = async (): Promise<void> => {
        const over = windows.front();
        const startAt = places.lastFolder.get();
        const files = await askOpen(
          over,
          { title: 'Open', startAt, filters: [filters.buildOrJson, filters.all] },
          true,
        );
        for (const file of files) {
          places.lastFolder.set(path.dirname(file));
          await opening.open(file, over);
        }
      };
      /** Undo and redo belong to the typing while the keyboard is in a text field. */
      const step = (direction: 'undo' | 'redo'): void => {
        const front = windows.front();
        if (front === undefined) return;
        if (front.report.editingText) front.window.webContents[direction]();
        else tell(front, 'menu', { action: direction });
      };
      const commands: MenuCommands = {
        newBuild: () => inBackground(newBuild(windows.front(), needs)),
        open: () => inBackground(openWithDialog()),
        openRecent: (file) => inBackground(opening.open(file, windows.front())),
        clearRecent: () => {
          recent.clear();
          // They tell of the same files.
          kept.clear();
          app.clearRecentDocuments();
        },
        openExample: (state) => inBackground(openExample(state, windows.front(), needs)),
        resetExample: () => inBackground(resetExample(windows.front(), needs)),
        saveCopy: () => inBackground(saveCopy(windows.front(), needs)),
        showInFolder: () => {
          const file = windows.front()?.build?.path;
          if (file !== undefined) system.showItemInFolder(file);
        },
        undo: () => step('undo'),
        redo: () => step('redo'),
        send: (action: MenuAction) => {
          const front = windows.front();
          if (front !== undefined) tell(front, 'menu', { action });
        },
        setTheme: (theme) => setPreferences({ ...preferences.get(), theme }),
        showWindow: (id) => {
          const found = windows.all().find((each) => each.window.id === id);
          if (found !== undefined) windows.show(found);
        },
        about: () => {
          const message = `Waywright ${app.getVersion()}`;
          const detail = 'Plan, check and build whole machines from your own castings. Free under the MIT licence.';
          inBackground(askUser(windows.front(), 'info', { message, detail }));
        },
      };
      const menuState = (): MenuState => {
        const front = windows.front();
        return {
          platform,
          developer: !app.isPackaged,
          front: front && { ...front.report, hasFile: front.build !== undefined },
          recent: recent.list(),
          homeFolder: app.getPath('home'),
          windows: windows
            .all()
            .filter(({ window }) => !window.isDestroyed())
            .map((each) => ({ id: each.window.id, title: each.window.getTitle(), front: each === front }))
            .sort((a, b) => a.id - b.id),
          theme: preferences.get().theme,
        };
      };
      refreshMenu = keepMenu(menuState, commands);
      refreshMenu();

      registerHandlers(ipcMain, {
        windows,
        opening,
        places,
        recent,
        kept,
        shop,
        preferences: { get: preferences.get, set: setPreferences },
        newBuild: (asking) => newBuild(asking, needs),
        openWithDialog,
        openExample: (state, asking) => openExample(state, asking, needs),
      });

      openRequested = async ({ files, example }) => {
        for (const file of files) await opening.open(file, undefined, { jsonTo: places.opened });
        if (example !== undefined) await openExample(example, undefined, needs);
        const front = windows.front();
        if (front === undefined) windows.add();
        else if (files.length === 0 && example === undefined) windows.show(front);
      };
      waitForFiles = async () => {
        await Promise.all([recent.settled(), kept.settled(), preferences.settled(), places.lastFolder.settled()]);
      };
    },
    open: (request) => openRequested(request),
    end: () => waitForFiles(),
  };
}
