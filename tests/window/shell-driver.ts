import type { ElectronApplication, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Channel, EventName, IpcEvents, Request, Response, WaywrightApi } from '../../src/shared/ipc/contract.ts';

/** What native dialogs answer while a test drives the program, in order; a question without an answer is a failure. */
export interface DialogAnswers {
  readonly open?: readonly (readonly string[])[];
  /** An empty path means that the user thought better of it. */
  readonly save?: readonly string[];
  /** The words on the button to press. */
  readonly box?: readonly string[];
}

export interface AskedBox {
  readonly message: string;
  readonly detail: string;
  readonly buttons: readonly string[];
}

interface Stubbed {
  readonly boxes: AskedBox[];
  readonly answers: { open: string[][]; save: string[]; box: string[] };
}

/** Puts answers in the place of native dialogs. May be called again with more answers. */
export async function answerDialogs(app: ElectronApplication, answers: DialogAnswers): Promise<void> {
  await app.evaluate(({ dialog }, given) => {
    const place = globalThis as unknown as { stubbed?: Stubbed };
    const stubbed: Stubbed = place.stubbed ?? { boxes: [], answers: { open: [], save: [], box: [] } };
    place.stubbed = stubbed;
    stubbed.answers.open = (given.open ?? []).map((files) => [...files]);
    stubbed.answers.save = [...(given.save ?? [])];
    stubbed.answers.box = [...(given.box ?? [])];
    dialog.showOpenDialog = async () => {
      const filePaths = stubbed.answers.open.shift() ?? [];
      return { canceled: filePaths.length === 0, filePaths };
    };
    dialog.showSaveDialog = async () => {
      const filePath = stubbed.answers.save.shift() ?? '';
      return { canceled: filePath === '', filePath };
    };
    const box = async (...args: unknown[]): Promise<{ response: number; checkboxChecked: boolean }> => {
      const { message, detail, buttons, cancelId } = args.at(-1) as AskedBox & { cancelId: number };
      stubbed.boxes.push({ message, detail, buttons: [...buttons] });
      const wanted = stubbed.answers.box.shift();
      const at = wanted === undefined ? -1 : buttons.indexOf(wanted);
      return { response: at < 0 ? cancelId : at, checkboxChecked: false };
    };
    dialog.showMessageBox = box as typeof dialog.showMessageBox;
  }, answers);
}

/** The message boxes shown so far. */
export const askedBoxes = (app: ElectronApplication): Promise<readonly AskedBox[]> =>
  app.evaluate(() => (globalThis as unknown as { stubbed?: Stubbed }).stubbed?.boxes ?? []);

/** Asks the shell as the window does. */
export const invoke = <C extends Channel>(page: Page, channel: C, request: Request<C>): Promise<Response<C>> =>
  page.evaluate(
    ([name, payload]) => {
      const api = Reflect.get(globalThis, 'waywright') as WaywrightApi;
      return api.invoke(name as Channel, payload as never) as Promise<unknown>;
    },
    [channel, request] as const,
  ) as Promise<Response<C>>;

/** Keeps what the shell tells the window from now on, for {@link heard}. */
export const listen = (page: Page, event: EventName): Promise<void> =>
  page.evaluate((name) => {
    const api = Reflect.get(globalThis, 'waywright') as WaywrightApi;
    const kept: unknown[] = [];
    Reflect.set(globalThis, `heard:${name}`, kept);
    api.on(name, (payload) => kept.push(payload));
  }, event);

export const heard = <E extends EventName>(page: Page, event: E): Promise<IpcEvents[E][]> =>
  page.evaluate((name) => Reflect.get(globalThis, `heard:${name}`) as never, event);

export interface MenuItemSeen {
  readonly label: string;
  readonly enabled: boolean;
  readonly accelerator: string | undefined;
  readonly submenu: readonly string[];
}

/** Reads an item of the native menu bar by its id. */
export const menuItem = (app: ElectronApplication, id: string): Promise<MenuItemSeen | undefined> =>
  app.evaluate(({ Menu }, wanted) => {
    const item = Menu.getApplicationMenu()?.getMenuItemById(wanted);
    if (item === null || item === undefined) return undefined;
    const accelerator = item.accelerator === null ? undefined : item.accelerator;
    const submenu = item.submenu?.items.map((each) => each.label) ?? [];
    return { label: item.label, enabled: item.enabled, accelerator, submenu };
  }, id);

/** Chooses an item of the native menu bar, as soon as it is enabled. */
export async function chooseMenu(app: ElectronApplication, id: string): Promise<void> {
  await expect.poll(() => menuItem(app, id).then((item) => item?.enabled), { message: id, timeout: 5_000 }).toBe(true);
  await app.evaluate(({ Menu }, wanted) => Menu.getApplicationMenu()?.getMenuItemById(wanted)?.click(), id);
}

export const titles = (app: ElectronApplication): Promise<readonly string[]> =>
  app.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()
      .map((window) => window.getTitle())
      .sort(),
  );
