import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../shared/base/result.ts';
import type { OpenError } from '../../shared/ipc/contract.ts';
import { identityOf } from '../files/file-identity.ts';
import { freeName } from '../files/free-name.ts';
import { importJsonBuild } from '../files/import-json.ts';
import { openWords } from '../files/open-words.ts';
import type { Places } from '../files/places.ts';
import { realFile } from '../files/real-file.ts';
import type { RecentFiles } from '../files/recent-files.ts';
import { openStore } from '../store/open-store.ts';
import type { Store } from '../store/store.ts';
import type { BuildWindow, OpenBuild } from './build-window.ts';
import { askUser } from './dialogs.ts';
import { offerRecovery } from './recovering.ts';
import { isFree, nameOf, type Windows } from './windows.ts';

export interface Opening {
  /**
   * Opens a build file, or a build in JSON form (of which a build file is made first), in a window of its own; one that
   * is open already comes forward. Every failure is told to the user.
   * @param asking the window that asked; it takes the build when it has none
   */
  open(file: string, asking?: BuildWindow, options?: OpenFileOptions): Promise<void>;
  /** Opens into this very window, which has just been made free, without any message. */
  openInto(window: BuildWindow, file: string): Promise<Result<OpenBuild, OpenError>>;
}

export interface OpenFileOptions {
  /** Where the build made of a JSON file goes; by default beside that file. */
  readonly jsonTo?: string;
  /** Not one of the user's own files (an example): kept out of the recent ones. */
  readonly unlisted?: boolean;
}

export interface OpeningNeeds {
  readonly windows: Windows;
  readonly recent: RecentFiles;
  readonly places: Places;
  /** Hears of every file that is put on the list of recent files. */
  readonly onRecent: (file: string) => void;
}

const isJson = (file: string): boolean => path.extname(file).toLowerCase() === '.json';

export function opening(needs: OpeningNeeds): Opening {
  const { windows, recent, places } = needs;
  /** Files on their way: a double click is two requests for the same file. */
  const underWay = new Map<string, Promise<void>>();

  /** Hands the store of a file to a window as soon as it is open; the window is reserved for it meanwhile. */
  const into = async (
    target: BuildWindow,
    file: string,
    opens: Promise<Result<Store, OpenError>>,
  ): Promise<{ opened: Result<OpenBuild, OpenError>; window: BuildWindow }> => {
    let finish = (): void => {};
    target.reserved = true;
    target.busy = new Promise((go) => {
      finish = go;
    });
    try {
      const store = await opens;
      if (!store.ok) return { opened: store, window: target };
      store.value.readAhead();
      const build: OpenBuild = { path: file, store: store.value, identity: await identityOf(file) };
      const window = target.window.isDestroyed() ? windows.add() : target;
      windows.assign(window, build);
      return { opened: ok(build), window };
    } finally {
      target.reserved = false;
      finish();
    }
  };

  const openNow = async (file: string, asking: BuildWindow | undefined, options: OpenFileOptions): Promise<void> => {
    const free = asking !== undefined && isFree(asking) ? asking : windows.empty();
    // The disk is at work while a window is made.
    const store = openStore(file, { backups: places.backups, readAhead: true });
    // With no window at all a message would hang in the air: the window is seen first. A further one waits unseen.
    const further = free === undefined && windows.all().length > 0 ? windows.add(true) : undefined;
    const { opened, window } = await into(free ?? further ?? windows.add(), file, store);
    if (opened.ok) {
      if (options.unlisted !== true) {
        recent.add(file);
        needs.onRecent(file);
      }
      windows.show(window);
      return;
    }
    if (further !== undefined) windows.drop(further);
    await tellTrouble(window === further ? (asking ?? windows.front()) : window, opened.error);
  };

  const tellTrouble = async (over: BuildWindow | undefined, error: OpenError): Promise<void> => {
    if (error.code === 'damaged') {
      await offerRecovery(over, error, { windows, places, openFile: (file) => self.open(file, over) });
      return;
    }
    if (error.code === 'not-found' && recent.has(error.path)) {
      const answer = await askUser(over, 'warning', openWords(error), ['Keep in List', 'Remove from List'], 0);
      if (answer === 1) recent.remove(error.path);
      return;
    }
    await askUser(over, 'warning', openWords(error));
  };

  const buildOfJson = async (file: string, to: string, over: BuildWindow | undefined): Promise<string | undefined> => {
    const target = async (folder: string): Promise<string> => {
      await mkdir(folder, { recursive: true });
      return freeName(folder, nameOf(file), '.wayw');
    };
    const made = await importJsonBuild(file, await target(to), () => target(places.opened));
    if (made.ok) return made.value;
    await askUser(over, 'warning', made.error);
    return undefined;
  };

  const self: Opening = {
    async open(asked, asking, options = {}) {
      const file = await realFile(asked);
      const running = underWay.get(file);
      if (running !== undefined) return running;
      const work = (async () => {
        const shown = windows.showing(file);
        if (shown !== undefined) {
          if (recent.has(file)) recent.add(file);
          return windows.show(shown);
        }
        if (!isJson(file) || !existsSync(file)) return openNow(file, asking, options);
        if (windows.all().length === 0) windows.add();
        const build = await buildOfJson(file, options.jsonTo ?? path.dirname(file), asking ?? windows.front());
        if (build !== undefined) await openNow(build, asking, options);
      })();
      underWay.set(file, work);
      try {
        await work;
      } finally {
        underWay.delete(file);
      }
    },
    async openInto(window, file) {
      const { opened } = await into(window, file, openStore(file, { backups: places.backups, readAhead: true }));
      return opened;
    },
  };
  return self;
}
