import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setImmediate as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { MachineId } from '../../shared/base/ids.ts';
import { err, ok } from '../../shared/base/result.ts';
import { defaultMachine } from '../../shared/build/machine.ts';
import { type Channel, type CommitError, channels, type OpenedBuild } from '../../shared/ipc/contract.ts';
import { type BuildWindow, emptyReport } from '../app/build-window.ts';
import type { Opening } from '../app/opening.ts';
import type { Windows } from '../app/windows.ts';
import { identityOf } from '../files/file-identity.ts';
import { openKeptViews } from '../files/kept-views.ts';
import { places } from '../files/places.ts';
import { openRecentFiles } from '../files/recent-files.ts';
import { defaultPreferences } from '../preferences/preferences.ts';
import { openShop } from '../shop/open-shop.ts';
import type { Store } from '../store/store.ts';
import { safeFileName } from './file-handlers.ts';
import type { IncomingEvent } from './handle.ts';
import { registerHandlers } from './register-handlers.ts';

// No window is opened here, and the native parts are replaced by those below.
vi.mock('electron', () => ({ app: {}, BrowserWindow: {}, dialog: {}, nativeTheme: {}, screen: {} }));

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'waywright-handlers-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const saved = { revision: 1, undo: 'add base', redo: undefined };
const diff = { added: [], updated: [], removed: [] };
const edit = { revision: 0, label: 'add base', diff };

function shell(store?: Partial<Store>, file = path.join(folder, 'engine.wayw'), identity?: string) {
  const window: BuildWindow = {
    window: { isDestroyed: () => false } as BuildWindow['window'],
    build: store === undefined ? undefined : { path: file, store: store as Store, identity },
    broken: undefined,
    reserved: false,
    busy: Promise.resolve(),
    told: false,
    report: emptyReport,
    pending: 0,
    failed: undefined,
    edited: false,
    mayClose: false,
  };
  const opened: unknown[] = [];
  const listeners = new Map<string, (event: IncomingEvent, payload: unknown) => Promise<unknown>>();
  const recent = openRecentFiles(folder);
  const kept = openKeptViews(folder, () => 'engine');
  registerHandlers(
    { handle: (channel, listener) => void listeners.set(channel, listener) },
    {
      windows: { ofSender: () => window, refresh: () => {} } as unknown as Windows,
      opening: { open: async (...args: unknown[]) => void opened.push(args) } as unknown as Opening,
      places: places(folder, folder, folder),
      recent,
      kept,
      shop: openShop(folder),
      preferences: { get: () => defaultPreferences, set: () => {} },
      newBuild: async () => void opened.push('new'),
      openWithDialog: async () => void opened.push('dialog'),
      openExample: async (state) => void opened.push(state),
    },
  );
  const event = { sender: { id: 1 }, senderFrame: { url: 'app://waywright/index.html', parent: null } };
  const ask = (channel: Channel, payload: unknown) => listeners.get(channel)?.(event, payload);
  return { window, opened, listeners, recent, kept, ask };
}

test('every channel of the contract is answered, and no other', () => {
  expect([...shell().listeners.keys()].sort()).toEqual([...channels].sort());
});

test('a window without a build says so and takes no edits', async () => {
  const { ask } = shell();
  expect(await ask('build:load', undefined)).toEqual(ok(undefined));
  expect(await ask('build:commit', edit)).toEqual(err({ code: 'read-only' }));
  expect(await ask('build:step', { revision: 0, direction: 'undo' })).toEqual(err({ code: 'read-only' }));
  expect(await ask('issue:list', undefined)).toEqual([]);
  expect(await ask('issue:make', { letter: 'A', title: '', note: '' })).toEqual(err({ code: 'read-only' }));
  expect(await ask('files:recover', undefined)).toEqual(err({ code: 'read-only' }));
});

describe('an edit', () => {
  test('is counted while it is on its way, and marks the window as saved', async () => {
    const pending: number[] = [];
    const { ask, window } = shell({
      commit: async () => {
        pending.push(window.pending);
        return ok(saved);
      },
    });
    expect(await ask('build:commit', edit)).toEqual(ok(saved));
    expect(pending).toEqual([1]);
    expect(window).toMatchObject({ pending: 0, edited: true, failed: undefined });
  });

  test('that cannot be written is remembered until the window has saved it or taken it back', async () => {
    const full: CommitError = { code: 'disk-full' };
    const { ask, window } = shell({ commit: async () => err(full) });
    expect(await ask('build:commit', edit)).toEqual(err(full));
    expect(window).toMatchObject({ pending: 0, edited: false, failed: full });
    await ask('window:state', { ...emptyReport, saving: true });
    expect(window.failed).toEqual(full);
    await ask('window:state', { ...emptyReport, saving: false });
    expect(window.failed).toBeUndefined();
  });

  test('on a revision that has passed leaves nothing to lose', async () => {
    const { ask, window } = shell({ commit: async () => err({ code: 'stale-revision', current: 4 }) });
    await ask('build:commit', edit);
    expect(window.failed).toBeUndefined();
  });

  test('that breaks a promise is not counted for ever', async () => {
    const { ask, window } = shell({ commit: () => Promise.reject(new Error('bug')) });
    await expect(ask('build:commit', edit)).rejects.toThrow('bug');
    expect(window.pending).toBe(0);
  });

  test.each(['moved', 'replaced'])('is not written when the file was %s outside the program', async (how) => {
    const file = path.join(folder, 'engine.wayw');
    writeFileSync(file, 'x');
    let commits = 0;
    const commit = async () => {
      commits++;
      return ok(saved);
    };
    const { ask, window } = shell({ readOnly: undefined, commit }, file, await identityOf(file));
    expect(await ask('build:commit', edit)).toEqual(ok(saved));
    renameSync(file, path.join(folder, 'elsewhere.wayw'));
    if (how === 'replaced') writeFileSync(file, 'y');
    expect(await ask('build:commit', edit)).toMatchObject({ ok: false, error: { code: 'unwritable' } });
    expect(commits).toBe(1);
    expect(window.failed?.code).toBe('unwritable');
    if (how === 'replaced') return;
    renameSync(path.join(folder, 'elsewhere.wayw'), file);
    expect(await ask('build:commit', edit)).toEqual(ok(saved));
  });
});

const damaged = { code: 'damaged', path: '/b/engine.wayw', detail: 'a row' } as const;
const read: OpenedBuild = { ...saved, fileName: 'engine', folder: '/b', records: '[]', readOnly: undefined };

test('a build that cannot be read is let go of, so that it can be recovered', async () => {
  let closed = 0;
  const close = async () => void closed++;
  const { ask, window } = shell({ read: async () => err(damaged), close });
  expect(await ask('build:load', undefined)).toEqual(err(damaged));
  expect(closed).toBe(1);
  expect(window).toMatchObject({ build: undefined, broken: damaged, told: true });
  expect(await ask('build:load', undefined)).toEqual(err(damaged));
});

describe('the rows of a build that was read', () => {
  test('are looked through after the page has them; a damaged build is let go of then', async () => {
    let closed = 0;
    const close = async () => void closed++;
    const { ask, window } = shell({ read: async () => ok(read), verify: async () => err(damaged), close });
    expect(await ask('build:load', undefined)).toEqual(ok(read));
    expect(closed).toBe(0);
    expect(await ask('build:verify', undefined)).toEqual(err(damaged));
    expect(closed).toBe(1);
    expect(window).toMatchObject({ build: undefined, broken: damaged });
    expect(await ask('build:verify', undefined)).toEqual(err(damaged));
    expect(await ask('build:load', undefined)).toEqual(err(damaged));
  });

  test('are looked through before a page gets them again', async () => {
    let verdict = (_: ReturnType<typeof ok<undefined>>): void => {};
    let copies = 0;
    const { ask } = shell({
      read: async () => ok(read),
      verify: () => new Promise((go) => (verdict = go)),
      backUpSoon: () => void copies++,
      backedUp: Promise.resolve(ok(undefined)),
    });
    await ask('build:load', undefined);
    const seen: string[] = [];
    const note = (what: string) => (value: unknown) => {
      seen.push(what);
      return value;
    };
    const again = ask('build:load', undefined)?.then(note('loaded again'));
    const verified = ask('build:verify', undefined)?.then(note('verified'));
    await pause();
    await pause();
    expect([copies, ...seen]).toEqual([0]);
    verdict(ok(undefined));
    expect(await again).toEqual(ok(read));
    expect(await verified).toEqual(ok(undefined));
    expect(copies).toBe(1);
  });
});

test('views of a build are kept once it is sound, for the very records that were handed over', async () => {
  let records = '[1]';
  let verdict = (_: ReturnType<typeof ok<undefined>>): void => {};
  const { ask, kept } = shell({
    read: async () => ok({ ...read, records }),
    verify: () => new Promise((go) => (verdict = go)),
    backUpSoon: () => {},
    backedUp: Promise.resolve(ok(undefined)),
  });
  await ask('views:keep', { views: 'of nothing' });
  expect(await ask('build:load', undefined)).toEqual(ok({ ...read, records, keptViews: undefined }));
  const early = ask('views:wanted', undefined);
  await pause();
  verdict(ok(undefined));
  expect(await early).toEqual({ records: '[1]' });
  // Edited while they are worked out: they are of what they are of.
  records = '[2]';
  await ask('views:keep', { views: 'of 1' });
  await ask('views:keep', { views: 'of nothing' });
  await kept.settled();
  expect(await ask('build:load', undefined)).toEqual(ok({ ...read, records: '[2]', keptViews: undefined }));
  expect(await ask('views:wanted', undefined)).toEqual({ records: '[2]' });
  records = '[1]';
  expect(await ask('build:load', undefined)).toEqual(ok({ ...read, records: '[1]', keptViews: 'of 1' }));
  expect(await ask('views:wanted', undefined)).toBeUndefined();
});

test('a page opens recent files only, and what is let fall on it', async () => {
  const { ask, opened, recent, window } = shell();
  await ask('files:open', { recent: '/etc/secret.wayw' });
  expect(opened).toEqual([]);
  recent.add('/b/engine.wayw');
  await ask('files:open', { recent: '/b/engine.wayw' });
  await ask('files:open', { recent: undefined });
  await ask('files:open-dropped', { paths: ['/b/lathe.WAYW', '/b/sent.json'] });
  await ask('files:open-example', { state: 'as-corrected' });
  expect(opened).toEqual([
    ['/b/engine.wayw', window],
    'dialog',
    ['/b/lathe.WAYW', window],
    ['/b/sent.json', window],
    'as-corrected',
  ]);
  await recent.settled();
});

test.each([
  ['Bench drill', 'Bench drill'],
  ['../../etc/passwd', 'etc passwd'],
  ['a:b*c?', 'a b c'],
  ['...', 'build'],
  ['line\nbreak', 'line break'],
])('a suggested file name cannot lead elsewhere: %j', (name, safe) => {
  expect(safeFileName(name)).toBe(safe);
});

test('the user’s machines are kept, and a thing that is none is turned away at the door', async () => {
  const { ask } = shell();
  const machine = defaultMachine('machine:lathe00001' as MachineId, 'lathe', 'lathe', 1);
  const put = await ask('shop:put', { machine, lengthUnit: 'mm' });
  expect(put).toEqual(ok({ machines: [machine], lost: [] }));
  expect(await ask('shop:load', undefined)).toEqual(put);
  await expect(ask('shop:put', { machine: { ...machine, type: 'anvil' }, lengthUnit: 'mm' })).rejects.toThrow(
    /Refused/,
  );
  await expect(ask('shop:remove', { machine: 'part:lathe00001' })).rejects.toThrow(/Refused/);
  expect(await ask('shop:remove', { machine: machine.id })).toEqual(ok({ machines: [], lost: [] }));
});
