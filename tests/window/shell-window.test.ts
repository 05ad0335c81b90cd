import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import type { Request } from '../../src/shared/ipc/contract.ts';
import { type Launch, type Launched, launch } from '../support/electron.ts';
import { answerDialogs, askedBoxes, chooseMenu, heard, invoke, listen, menuItem, titles } from './shell-driver.ts';

let folder = '';
let running: Launched | undefined;
const inFolder = (name: string) => path.join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-shell-'));
});
afterEach(async () => {
  await running?.close();
  running = undefined;
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

async function begin(how: Launch = {}): Promise<Launched> {
  running = await launch({ userData: inFolder('data'), ...how });
  return running;
}

async function makeBuild(name: string): Promise<string> {
  const file = inFolder(`${name}.wayw`);
  const made = await createStore(file, [defaultSettings(name)]);
  expect(made.ok).toBe(true);
  return file;
}

/** The page shows the build and has said so: from then on it reports only what changes in it. */
async function pageShows({ app, page }: Launched, name: string): Promise<void> {
  await page.getByText(name).first().waitFor();
  await expect.poll(() => menuItem(app, 'find').then((item) => item?.enabled)).toBe(true);
}

const report: Request<'window:state'> = {
  undo: undefined,
  redo: undefined,
  saving: false,
  editingText: false,
  hasBuild: true,
  readOnly: false,
};

describe('the menu bar', () => {
  test('follows what the window tells, and hands its actions to it', async () => {
    const file = await makeBuild('Menus');
    const launched = await begin({ args: [file] });
    const { app, page } = launched;
    await pageShows(launched, 'Menus');
    await invoke(page, 'window:state', { ...report, undo: 'set bore of column' });
    await expect.poll(() => menuItem(app, 'undo')).toMatchObject({ label: 'Undo set bore of column', enabled: true });
    expect(await menuItem(app, 'redo')).toMatchObject({ label: 'Redo', enabled: false, accelerator: 'Ctrl+Y' });
    await listen(page, 'menu');
    await chooseMenu(app, 'undo');
    await chooseMenu(app, 'find');
    await expect.poll(() => heard(page, 'menu')).toEqual([{ action: 'undo' }, { action: 'find' }]);
  });

  test('gives undo to the text field while the keyboard is in one', async () => {
    const file = await makeBuild('Typing');
    const launched = await begin({ args: [file] });
    const { app, page } = launched;
    await pageShows(launched, 'Typing');
    await page.evaluate(() => {
      const field = document.createElement('input');
      field.id = 'typed-into';
      document.body.append(field);
      field.focus();
    });
    await page.keyboard.type('62.5');
    await invoke(page, 'window:state', { ...report, editingText: true, undo: 'add base' });
    await expect.poll(() => menuItem(app, 'undo')).toMatchObject({ label: 'Undo Typing', enabled: true });
    await listen(page, 'menu');
    await chooseMenu(app, 'undo');
    await expect.poll(() => page.locator('#typed-into').inputValue()).not.toBe('62.5');
    expect(await heard(page, 'menu')).toEqual([]);
  });
});

describe('preferences', () => {
  test('the theme holds at once, is told to the window, and outlives the program', async () => {
    const { app, page, userData } = await begin();
    expect(await invoke(page, 'preferences:get', undefined)).toEqual({ theme: 'system' });
    await listen(page, 'preferences:changed');
    await chooseMenu(app, 'theme-dark');
    await expect.poll(() => heard(page, 'preferences:changed')).toEqual([{ theme: 'dark' }]);
    // The test driver holds every page at light unless told not to.
    await page.emulateMedia({ colorScheme: null });
    expect(await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches)).toBe(true);
    await running?.close();
    expect(JSON.parse(readFileSync(path.join(userData, 'preferences.json'), 'utf8'))).toEqual({ theme: 'dark' });
    const again = await begin();
    expect(await invoke(again.page, 'preferences:get', undefined)).toEqual({ theme: 'dark' });
    expect(await again.app.evaluate(({ nativeTheme }) => nativeTheme.themeSource)).toBe('dark');
  });

  test('a damaged file of preferences does not keep the program from starting', async () => {
    const file = await makeBuild('Sturdy');
    const first = await begin();
    await running?.close();
    for (const name of ['preferences.json', 'recent-files.json', 'last-folder.json', 'window-state.json'])
      writeFileSync(path.join(first.userData, name), '{"theme": ');
    const { app } = await begin({ args: [file] });
    await expect.poll(() => titles(app)).toEqual(['Sturdy — Waywright']);
  });
});

describe('closing', () => {
  const from = defaultSettings('Closing');
  const grade = (castingGrade: number) => ({
    added: [],
    removed: [],
    updated: [[from, { ...from, castingGrade }]] as const,
  });

  test('waits for the edit on its way and lets go of the file', async () => {
    const file = await makeBuild('Closing');
    const { app, page } = await begin({ args: [file] });
    await expect.poll(() => titles(app)).toEqual(['Closing — Waywright']);
    await invoke(page, 'build:load', undefined);
    const gone = app.waitForEvent('close');
    // Not awaited by the page: the window is closed while the edit is under way.
    await page.evaluate((diff) => {
      const api = Reflect.get(globalThis, 'waywright');
      void api.invoke('build:commit', { revision: 0, label: 'set casting grade', diff });
    }, grade(8));
    await app.evaluate(({ app: program }) => setImmediate(() => program.quit()));
    await gone;
    expect(existsSync(`${file}-wal`)).toBe(false);
    const store = await openStore(file);
    if (!store.ok) throw new Error(store.error.code);
    expect(store.value.readOnly).toBeUndefined();
    expect(await store.value.load()).toMatchObject({ ok: true, value: { revision: 1, undo: 'set casting grade' } });
    await store.value.close();
  });

  test('asks when the last edit could not be saved, and stays open if it is to be kept', async () => {
    const file = await makeBuild('Closing');
    const launched = await begin({ args: [file] });
    const { app, page } = launched;
    await pageShows(launched, 'Closing');
    // Half a character is what the store refuses to write, whoever runs the test and on whatever disk.
    const diff = { added: [], removed: [], updated: [[from, { ...from, note: 'half: \ud83d' }]] as const };
    await invoke(page, 'window:state', { ...report, saving: true });
    const refused = await invoke(page, 'build:commit', { revision: 0, label: 'set note', diff });
    expect(refused).toMatchObject({ ok: false, error: { code: 'unwritable' } });
    await expect.poll(() => titles(app)).toEqual(['Closing (not saved) — Waywright']);
    await answerDialogs(app, { box: ['Keep Open'] });
    await app.evaluate(({ app: program }) => setImmediate(() => program.quit()));
    await expect.poll(() => askedBoxes(app)).toHaveLength(1);
    expect((await askedBoxes(app))[0]).toMatchObject({
      message: 'The last edit of “Closing” is not on disk.',
      buttons: ['Keep Open', 'Close and Lose the Edit'],
    });
    expect(await titles(app)).toHaveLength(1);
    // The window still works: the edit is made again, and goes.
    expect(await invoke(page, 'build:commit', { revision: 0, label: 'set grade', diff: grade(7) })).toMatchObject({
      ok: true,
    });
    await invoke(page, 'window:state', report);
    await expect.poll(() => titles(app)).toEqual(['Closing (saved) — Waywright']);
    const gone = app.waitForEvent('close');
    await app.evaluate(({ app: program }) => setImmediate(() => program.quit()));
    await gone;
  });
});

test('a build held elsewhere is opened for reading, and title and menu say so', async () => {
  const file = await makeBuild('Held');
  const holder = await openStore(file);
  if (!holder.ok) throw new Error(holder.error.code);
  try {
    const { app, page } = await begin({ args: [file] });
    await expect.poll(() => titles(app)).toEqual(['Held (read-only) — Waywright']);
    const loaded = await invoke(page, 'build:load', undefined);
    expect(loaded).toMatchObject({ ok: true, value: { readOnly: { why: 'held' } } });
    const from = defaultSettings('Held');
    const diff = { added: [], removed: [], updated: [[from, { ...from, castingGrade: 8 }]] as const };
    const refused = await invoke(page, 'build:commit', { revision: 0, label: 'x', diff });
    expect(refused).toEqual({ ok: false, error: { code: 'read-only' } });
    await expect.poll(() => menuItem(app, 'save-copy')).toMatchObject({ enabled: true });
    expect(await menuItem(app, 'import-csv')).toMatchObject({ enabled: false });
  } finally {
    await holder.value.close();
  }
});

test('a page that dies is offered to be loaded again, with everything saved', async () => {
  const file = await makeBuild('Survivor');
  const { app, page } = await begin({ args: [file] });
  await expect.poll(() => titles(app)).toEqual(['Survivor — Waywright']);
  await answerDialogs(app, { box: ['Load Again'] });
  const died = page.waitForEvent('crash');
  await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer());
  await died;
  await expect.poll(() => askedBoxes(app).then((all) => all[0]?.message)).toBe('The window stopped working.');
  await expect
    .poll(() =>
      app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.webContents.executeJavaScript(
          `window.waywright.invoke('build:load', undefined).then((r) => r.value.fileName)`,
        ),
      ),
    )
    .toBe('Survivor');
});
