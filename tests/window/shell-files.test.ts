import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
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

const settingsOf = (records: string) => (JSON.parse(records) as { kind: string; name: string }[])[0];

describe('a new build', () => {
  test('asks its place, is on disk from the first moment, and takes the window', async () => {
    const { app, page } = await begin();
    expect(await invoke(page, 'build:load', undefined)).toEqual({ ok: true, value: undefined });
    expect(await titles(app)).toEqual(['Waywright']);
    await listen(page, 'build:replaced');
    // Without the ending: it is added.
    await answerDialogs(app, { save: [inFolder('Bench drill')] });
    await chooseMenu(app, 'new');
    await expect.poll(() => titles(app)).toEqual(['Bench drill — Waywright']);
    expect(existsSync(inFolder('Bench drill.wayw'))).toBe(true);
    expect(await heard(page, 'build:replaced')).toHaveLength(1);
    const loaded = await invoke(page, 'build:load', undefined);
    if (!loaded.ok || loaded.value === undefined) throw new Error('no build');
    expect(loaded.value).toMatchObject({ fileName: 'Bench drill', folder, revision: 0, readOnly: undefined });
    expect(settingsOf(loaded.value.records)).toEqual(defaultSettings('Bench drill'));
    expect((await invoke(page, 'files:recent', undefined)).map((each) => each.path)).toEqual([
      inFolder('Bench drill.wayw'),
    ]);
  });

  test('is not made when the user thinks better of it', async () => {
    const { app, page } = await begin();
    await answerDialogs(app, { save: [''] });
    await invoke(page, 'files:new', undefined);
    expect(await titles(app)).toEqual(['Waywright']);
  });

  test('does not replace a file of the full name unasked', async () => {
    const file = await makeBuild('Lathe');
    const before = readFileSync(file);
    const { app, page } = await begin();
    await answerDialogs(app, { save: [inFolder('Lathe')], box: ['Keep It'] });
    await invoke(page, 'files:new', undefined);
    expect((await askedBoxes(app)).map((box) => box.message)).toEqual(['Replace “Lathe.wayw”?']);
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

describe('opening', () => {
  test('one build per window; an open one comes forward; edits, undo and a restart', async () => {
    const first = await makeBuild('First');
    const second = await makeBuild('Second');
    const { app, page, userData } = await begin({ args: [first] });
    await expect.poll(() => titles(app)).toEqual(['First — Waywright']);

    await answerDialogs(app, { open: [[second], [first]] });
    const [other] = await Promise.all([app.waitForEvent('window'), chooseMenu(app, 'open')]);
    await expect.poll(() => titles(app)).toEqual(['First — Waywright', 'Second — Waywright']);
    const seen = await invoke(other, 'build:load', undefined);
    expect(seen.ok && seen.value?.fileName).toBe('Second');
    await chooseMenu(app, 'open');
    await expect.poll(() => menuItem(app, 'recent').then((menu) => menu?.submenu[0])).toContain('First.wayw');
    expect(await titles(app)).toHaveLength(2);
    await expect
      .poll(() => app.evaluate(({ BrowserWindow }) => BrowserWindow.getFocusedWindow()?.getTitle()))
      .toBe('First — Waywright');

    const from = defaultSettings('First');
    const diff = { added: [], removed: [], updated: [[from, { ...from, castingGrade: 9 }]] as const };
    const label = 'set casting grade to 9';
    const committed = await invoke(page, 'build:commit', { revision: 0, label, diff });
    expect(committed).toEqual({ ok: true, value: { revision: 1, undo: label, redo: undefined } });
    await expect.poll(() => titles(app)).toEqual(['First (saved) — Waywright', 'Second — Waywright']);
    const stale = await invoke(page, 'build:commit', { revision: 0, label, diff });
    expect(stale).toEqual({ ok: false, error: { code: 'stale-revision', current: 1 } });
    const issue = { letter: 'A', title: 'For the pattern shop', note: '' };
    expect(await invoke(page, 'issue:make', issue)).toMatchObject({ ok: true, value: { letter: 'A', revision: 1 } });
    expect(await invoke(page, 'issue:make', issue)).toMatchObject({ ok: false, error: { code: 'letter-taken' } });
    expect(await invoke(page, 'issue:list', undefined)).toMatchObject([{ letter: 'A', title: issue.title }]);

    await running?.kill();
    const again = await begin({ args: [first], userData });
    const loaded = await invoke(again.page, 'build:load', undefined);
    if (!loaded.ok || loaded.value === undefined) throw new Error('no build');
    expect(settingsOf(loaded.value.records)).toMatchObject({ castingGrade: 9 });
    expect(loaded.value.undo).toBe(label);
    const undone = await invoke(again.page, 'build:step', { revision: 1, direction: 'undo' });
    expect(undone).toMatchObject({ ok: true, value: { label, redo: label, undo: undefined } });
    const recent = await invoke(again.page, 'files:recent', undefined);
    expect(recent.map((each) => path.basename(each.path))).toEqual(['First.wayw', 'Second.wayw']);
  });

  test('a file named at the start that is not there leaves a window to go on from', async () => {
    const { app, page } = await begin({ args: [inFolder('gone.wayw')] });
    expect(await invoke(page, 'build:load', undefined)).toEqual({ ok: true, value: undefined });
    expect(await titles(app)).toEqual(['Waywright']);
  });

  test('a second start hands its file to the first and goes', async () => {
    const file = await makeBuild('Handed over');
    const { app, userData } = await begin();
    const before = await titles(app);
    expect(before).toEqual(['Waywright']);
    // The second one ends before it has a window, so its launch fails.
    await expect(launch({ args: [file], userData })).rejects.toThrow();
    await expect.poll(() => titles(app)).toEqual(['Handed over — Waywright']);
  });

  test('a page may ask for recent files only', async () => {
    const file = await makeBuild('Private');
    const { app, page } = await begin();
    await invoke(page, 'files:open', { recent: file });
    expect(await titles(app)).toEqual(['Waywright']);
  });

  test('every refusal is told in words, and the file is left as it is', async () => {
    const { app, page } = await begin();
    const text = inFolder('notes.wayw');
    writeFileSync(text, 'Not a build at all.\n'.repeat(500));
    const damaged = await makeBuild('Damaged');
    const bytes = readFileSync(damaged);
    bytes.fill(0xaa, 4096, 4096 * 3);
    writeFileSync(damaged, bytes);
    await answerDialogs(app, { open: [[text], [inFolder('gone.wayw')], [damaged]], box: ['OK', 'OK', 'Not Now'] });
    for (let i = 0; i < 3; i++) await invoke(page, 'files:open', { recent: undefined });
    const boxes = await askedBoxes(app);
    expect(boxes.map((box) => box.message)).toEqual([
      '“notes.wayw” is not a build.',
      '“gone.wayw” is not there.',
      '“Damaged.wayw” is damaged.',
    ]);
    expect(boxes[2]?.buttons).toEqual(['Recover into a New File', 'Not Now']);
    // The free window keeps the offer.
    expect(await invoke(page, 'build:load', undefined)).toMatchObject({ ok: false, error: { code: 'damaged' } });
    expect(readFileSync(damaged).equals(bytes)).toBe(true);
  });

  test('a damaged build is recovered into a new file, by the dialog or by the window', async () => {
    const { app, page } = await begin();
    const json = JSON.parse(
      readFileSync(path.resolve('resources/examples/bench-filing-machine-as-corrected.json'), 'utf8'),
    ) as { records: BuildRecord[] };
    const damaged = inFolder('Filing machine.wayw');
    expect((await createStore(damaged, json.records)).ok).toBe(true);
    const bytes = readFileSync(damaged);
    bytes.fill(0xaa, 4096 * 12, 4096 * 14);
    writeFileSync(damaged, bytes);
    await answerDialogs(app, { open: [[damaged], [damaged]], box: ['Not Now', 'Recover into a New File', 'OK'] });
    await invoke(page, 'files:open', { recent: undefined });
    expect(await invoke(page, 'build:load', undefined)).toMatchObject({ ok: false, error: { code: 'damaged' } });
    const recovered = await invoke(page, 'files:recover', undefined);
    if (!recovered.ok) throw new Error(JSON.stringify(recovered.error));
    expect(recovered.value.path).toBe(inFolder('Filing machine recovered.wayw'));
    expect(await titles(app)).toEqual(['Filing machine recovered — Waywright']);
    const loaded = await invoke(page, 'build:load', undefined);
    if (!loaded.ok || loaded.value === undefined) throw new Error('no build');
    const records = JSON.parse(loaded.value.records) as unknown[];
    expect(records.length).toBeGreaterThan(json.records.length / 2);

    await invoke(page, 'files:open', { recent: undefined });
    await expect
      .poll(() => titles(app))
      .toEqual(['Filing machine recovered 2 — Waywright', 'Filing machine recovered — Waywright']);
    const words = (await askedBoxes(app)).at(-1);
    expect(words?.message).toBe('“Filing machine.wayw” was recovered as “Filing machine recovered 2.wayw”.');
    expect(readFileSync(damaged).equals(bytes)).toBe(true);
  });

  test('a recent build that is gone is marked and can be taken off the list', async () => {
    const file = await makeBuild('Fleeting');
    const { app, page } = await begin({ args: [file] });
    await expect.poll(() => titles(app)).toEqual(['Fleeting — Waywright']);
    const gone = await makeBuild('Gone');
    await answerDialogs(app, { open: [[gone]], box: ['Remove from List'] });
    await invoke(page, 'files:open', { recent: undefined });
    await expect.poll(() => titles(app)).toHaveLength(2);
    await app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()
        .find((each) => each.getTitle().startsWith('Gone'))
        ?.close(),
    );
    await expect.poll(() => titles(app)).toHaveLength(1);
    rmSync(gone);
    expect(await invoke(page, 'files:recent', undefined)).toEqual([
      { path: gone, missing: true },
      { path: file, missing: false },
    ]);
    await invoke(page, 'files:open', { recent: gone });
    expect(await invoke(page, 'files:recent', undefined)).toEqual([{ path: file, missing: false }]);
    await chooseMenu(app, 'clear-recent');
    expect(await invoke(page, 'files:recent', undefined)).toEqual([]);
  });

  test('a file let fall on the window is opened', async () => {
    const file = await makeBuild('Dropped');
    const { app, page } = await begin();
    const devtools = await page.context().newCDPSession(page);
    const data = { items: [], files: [file], dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
      await devtools.send('Input.dispatchDragEvent', { type, x: 200, y: 200, data });
    }
    await expect.poll(() => titles(app)).toEqual(['Dropped — Waywright']);
    expect(page.url()).toBe('app://waywright/index.html');
  });
});

describe('JSON builds and examples', () => {
  test('a JSON build named at the start becomes a build file in the data folder', async () => {
    const json = inFolder('Sent by a friend.json');
    const content = { format: 'waywright-build', version: 1, records: [defaultSettings('Sent')], issues: [] };
    writeFileSync(json, JSON.stringify(content));
    const { app, userData } = await begin({ args: [json] });
    await expect.poll(() => titles(app)).toEqual(['Sent by a friend — Waywright']);
    expect(existsSync(path.join(userData, 'opened', 'Sent by a friend.wayw'))).toBe(true);
    expect(existsSync(inFolder('Sent by a friend.wayw'))).toBe(false);
  });

  test('one that is chosen becomes a build file beside it; a faulty one is told with its place', async () => {
    const json = inFolder('Good.json');
    const content = { format: 'waywright-build', version: 1, records: [defaultSettings('Good')], issues: [] };
    writeFileSync(json, JSON.stringify(content));
    writeFileSync(inFolder('Bad.json'), '{"format": "waywright-build",\n "version": 1, "records": [}');
    const { app, page } = await begin();
    await answerDialogs(app, { open: [[inFolder('Bad.json')], [json]] });
    await invoke(page, 'files:open', { recent: undefined });
    const [box] = await askedBoxes(app);
    expect(box?.message).toBe('“Bad.json” could not be taken in as a build.');
    expect(box?.detail).toContain('line 2, column');
    await invoke(page, 'files:open', { recent: undefined });
    await expect.poll(() => titles(app)).toEqual(['Good — Waywright']);
    expect(existsSync(inFolder('Good.wayw'))).toBe(true);
  });

  test('an example is opened as a copy, keeps its edits, and can be put back', async () => {
    const { app, page, userData } = await begin();
    const copy = path.join(userData, 'examples', 'bench-filing-machine-as-first-drawn.wayw');
    await chooseMenu(app, 'example-as-first-drawn');
    await expect.poll(() => titles(app)).toEqual(['bench-filing-machine-as-first-drawn — Waywright']);
    const loaded = await invoke(page, 'build:load', undefined);
    if (!loaded.ok || loaded.value === undefined) throw new Error('no build');
    const records = JSON.parse(loaded.value.records) as { kind: string; id: string }[];
    expect(records.filter((record) => record.kind === 'part').length).toBeGreaterThanOrEqual(10);
    expect(await invoke(page, 'files:recent', undefined)).toEqual([]);
    const settings = records.find((record) => record.kind === 'settings') as ReturnType<typeof defaultSettings>;
    const diff = { added: [], removed: [], updated: [[settings, { ...settings, note: 'mine' }]] as const };
    expect(await invoke(page, 'build:commit', { revision: 0, label: 'set note', diff })).toMatchObject({ ok: true });
    await answerDialogs(app, { box: ['As First Drawn'] });
    await listen(page, 'build:replaced');
    await chooseMenu(app, 'reset-example');
    await expect.poll(() => heard(page, 'build:replaced').then((all) => all.length)).toBe(2);
    const fresh = await invoke(page, 'build:load', undefined);
    expect(fresh).toMatchObject({ ok: true, value: { revision: 0, undo: undefined } });
    expect(existsSync(copy)).toBe(true);
    expect(existsSync(copy.replace('.wayw', ' kept.wayw'))).toBe(true);
    expect(await titles(app)).toHaveLength(1);
  });
});

describe('copies and texts', () => {
  test('a copy is written whole; the window stays with the original; the open file cannot be replaced', async () => {
    const file = await makeBuild('Original');
    const { app, page } = await begin({ args: [file] });
    await expect.poll(() => titles(app)).toEqual(['Original — Waywright']);
    await invoke(page, 'build:load', undefined);
    const copy = inFolder('Copy.wayw');
    await answerDialogs(app, { save: [copy, file], box: ['OK'] });
    await chooseMenu(app, 'save-copy');
    await expect
      .poll(() => askedBoxes(app).then((all) => all.at(-1)?.message))
      .toBe('A copy was saved as “Copy.wayw”.');
    expect(existsSync(copy)).toBe(true);
    await chooseMenu(app, 'save-copy');
    await expect
      .poll(() => askedBoxes(app).then((all) => all.at(-1)?.message))
      .toBe('“Original.wayw” is open in a window.');
    expect(await titles(app)).toEqual(['Original — Waywright']);
  });

  test('texts are picked and saved where the user says, and a full or closed place is told', async () => {
    const { app, page } = await begin();
    const csv = inFolder('table.csv');
    writeFileSync(csv, 'part,name,value\nbase,bore,62\n');
    await answerDialogs(app, {
      open: [[csv], []],
      save: [inFolder('out'), inFolder('none/out.csv'), '', inFolder('machine.wayw')],
    });
    expect(await invoke(page, 'files:pick-text', { kind: 'csv' })).toEqual({
      ok: true,
      value: { name: 'table.csv', text: 'part,name,value\nbase,bore,62\n' },
    });
    expect(await invoke(page, 'files:pick-text', { kind: 'csv' })).toEqual({ ok: true, value: undefined });
    const save = { kind: 'csv', suggestedName: '../../a:b', text: 'a,b\n' } as const;
    expect(await invoke(page, 'files:save-text', save)).toEqual({ ok: true, value: { path: inFolder('out.csv') } });
    expect(readFileSync(inFolder('out.csv'), 'utf8')).toBe('a,b\n');
    expect(await invoke(page, 'files:save-text', save)).toMatchObject({ ok: false, error: { code: 'unwritable' } });
    expect(await invoke(page, 'files:save-text', save)).toEqual({ ok: true, value: undefined });
    // A text never goes where a build belongs.
    expect(await invoke(page, 'files:save-text', save)).toMatchObject({ ok: false, error: { code: 'unwritable' } });
    expect(existsSync(inFolder('machine.wayw'))).toBe(false);
  });
});
