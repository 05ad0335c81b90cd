import type { Preferences } from '../../shared/ipc/contract.ts';
import type { BuildWindow } from '../app/build-window.ts';
import type { ExampleState } from '../app/launch.ts';
import type { Opening } from '../app/opening.ts';
import type { Windows } from '../app/windows.ts';
import type { KeptViews } from '../files/kept-views.ts';
import type { Places } from '../files/places.ts';
import type { RecentFiles } from '../files/recent-files.ts';
import type { Shop } from '../shop/open-shop.ts';
import { buildHandlers } from './build-handlers.ts';
import { fileHandlers } from './file-handlers.ts';
import { handle, type IpcMainLike } from './handle.ts';
import { schemas } from './schemas.ts';

export interface HandlerNeeds {
  readonly windows: Windows;
  readonly opening: Opening;
  readonly places: Places;
  readonly recent: RecentFiles;
  readonly kept: KeptViews;
  readonly shop: Shop;
  readonly preferences: { get(): Preferences; set(next: Preferences): void };
  newBuild(asking: BuildWindow): Promise<void>;
  openWithDialog(): Promise<void>;
  openExample(state: ExampleState, asking: BuildWindow): Promise<void>;
}

/** Opens the door for every channel of the contract. */
export function registerHandlers(ipc: IpcMainLike, needs: HandlerNeeds): void {
  const { windows, opening, places, recent, kept, shop, preferences } = needs;
  const build = buildHandlers(windows, opening, places, kept);
  const files = fileHandlers(windows, opening, places);

  handle(ipc, 'build:load', schemas['build:load'], build.load);
  handle(ipc, 'build:verify', schemas['build:verify'], build.verify);
  handle(ipc, 'build:commit', schemas['build:commit'], build.commit);
  handle(ipc, 'build:step', schemas['build:step'], build.step);
  handle(ipc, 'views:wanted', schemas['views:wanted'], build.viewsWanted);
  handle(ipc, 'views:keep', schemas['views:keep'], build.keepViews);
  handle(ipc, 'issue:list', schemas['issue:list'], build.issues);
  handle(ipc, 'issue:make', schemas['issue:make'], build.makeIssue);

  handle(ipc, 'files:recover', schemas['files:recover'], build.recover);
  handle(ipc, 'files:pick-text', schemas['files:pick-text'], files.pickText);
  handle(ipc, 'files:save-text', schemas['files:save-text'], files.saveText);
  handle(ipc, 'files:pick-solid', schemas['files:pick-solid'], files.pickSolid);
  handle(ipc, 'files:save-solid', schemas['files:save-solid'], files.saveSolid);
  handle(ipc, 'files:open-dropped', schemas['files:open-dropped'], files.openDropped);
  handle(ipc, 'files:recent', schemas['files:recent'], async () => recent.list());
  handle(ipc, 'files:new', schemas['files:new'], async (_, sender) => {
    await needs.newBuild(windows.ofSender(sender));
    return undefined;
  });
  handle(ipc, 'files:open', schemas['files:open'], async ({ recent: file }, sender) => {
    if (file === undefined) await needs.openWithDialog();
    // Only what the user once opened: a page that ran wild cannot read its way through the disk.
    else if (recent.has(file)) await opening.open(file, windows.ofSender(sender));
    return undefined;
  });
  handle(ipc, 'files:open-example', schemas['files:open-example'], async ({ state }, sender) => {
    await needs.openExample(state, windows.ofSender(sender));
    return undefined;
  });

  handle(ipc, 'shop:load', schemas['shop:load'], async () => shop.load());
  handle(ipc, 'shop:put', schemas['shop:put'], async ({ machine, lengthUnit }) => shop.put(machine, lengthUnit));
  handle(ipc, 'shop:remove', schemas['shop:remove'], async ({ machine }) => shop.remove(machine));

  handle(ipc, 'preferences:get', schemas['preferences:get'], async () => preferences.get());
  handle(ipc, 'preferences:set', schemas['preferences:set'], async (next) => {
    preferences.set(next);
    return undefined;
  });
  handle(ipc, 'window:state', schemas['window:state'], async (report, sender) => {
    const window = windows.ofSender(sender);
    window.report = report;
    // A window with nothing left to save has saved it or taken it back.
    if (!report.saving) window.failed = undefined;
    windows.refresh(window);
    return undefined;
  });
}
