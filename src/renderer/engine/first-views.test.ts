import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { syntheticBuild } from '../../../bench/synthetic-build.ts';
import { drumBuild } from '../../../tests/support/drum-build.ts';
import { idSource, type PartId } from '../../shared/base/ids.ts';
import { parseBuildJson } from '../../shared/build/build-json.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import { defaultSettings } from '../../shared/build/settings.ts';
import type { WaywrightApi } from '../../shared/ipc/contract.ts';
import { createEngine } from './engine.ts';
import { readFirstViews } from './first-views.ts';
import { createHost } from './host.ts';
import { keepViews, type PassingEngine } from './keep-views.ts';
import type { FromWorker, ToWorker } from './protocol.ts';
import type { ViewName } from './views.ts';

const example = (state: string): readonly BuildRecord[] => {
  const folder = path.resolve(import.meta.dirname, '../../../resources/examples');
  const read = parseBuildJson(readFileSync(path.join(folder, `bench-filing-machine-${state}.json`), 'utf8'));
  if (!read.ok) throw new Error('The example cannot be read.');
  return read.value.records;
};

const builds: readonly (readonly [name: string, records: () => readonly BuildRecord[]])[] = [
  ['with nothing in it', () => [defaultSettings('Empty')]],
  ['as first drawn', () => example('as-first-drawn')],
  ['as corrected', () => example('as-corrected')],
  ['of one turned part', drumBuild],
  ['of 400 dimensions', () => [...syntheticBuild(400).build.values()]],
];

const pause = (): Promise<void> => new Promise((go) => setTimeout(go, 1));
async function until(isSo: () => boolean): Promise<void> {
  for (let i = 0; i < 2_000 && !isSo(); i++) await pause();
  expect(isSo()).toBe(true);
}

/** A host as a worker: what crosses is cloned, one message at a time, and it may be held up. */
function startWorker(held: Promise<void> = Promise.resolve()) {
  let toWindow: (message: FromWorker) => void = () => {};
  let seed = 7;
  const newId = idSource(() => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return seed >>> 16;
  });
  const host = createHost((message) => queueMicrotask(() => toWindow(structuredClone(message))), {
    newId,
    now: () => '2026-01-01T00:00:00.000Z',
  });
  let ended = 0;
  const engine: PassingEngine = {
    post: (message: ToWorker) => void held.then(() => host(structuredClone(message))),
    listen: (listener) => {
      toWindow = listener;
    },
    end: () => void ended++,
  };
  return { engine, ended: () => ended };
}

function shellOf(records: readonly BuildRecord[]) {
  const text = JSON.stringify(records);
  const state = { kept: undefined as string | undefined, asked: 0 };
  const invoke = async (channel: string, request: unknown): Promise<unknown> => {
    const saved = { revision: 0, undo: undefined, redo: undefined };
    switch (channel) {
      case 'build:load': {
        const value = { ...saved, fileName: 't', folder: '/', records: text, readOnly: undefined };
        return { ok: true, value: { ...value, keptViews: state.kept } };
      }
      case 'build:verify':
        return { ok: true, value: undefined };
      case 'build:commit':
        return { ok: true, value: { ...saved, revision: 1, undo: 'edit' } };
      case 'views:wanted':
        state.asked++;
        return state.kept === undefined ? { records: text } : undefined;
      case 'views:keep':
        state.kept = (request as { views: string }).views;
        return undefined;
      default:
        throw new Error(`The test has no ${channel}.`);
    }
  };
  return { state, api: { invoke } as Pick<WaywrightApi, 'invoke'> };
}

const watchedFirst = (first: PartId | undefined): readonly [ViewName, unknown][] => [
  ['summary', null],
  ['findings', { part: null }],
  ...(first === undefined ? [] : ([['part', { part: first }]] as [ViewName, unknown][])),
];

/** Opens a window that watches what it shows first. @param hold holds its engine up, so that only what is kept can show. */
function openWindow(shell: ReturnType<typeof shellOf>, hold?: Promise<void>) {
  const engine = createEngine(startWorker(hold).engine, shell.api);
  const told = new Map<string, number>();
  const watchAll = (first: PartId | undefined) => {
    for (const [name, params] of watchedFirst(first))
      engine.watch(name, params, () => told.set(name, (told.get(name) ?? 0) + 1));
  };
  engine.onFile(() => {
    const file = engine.file();
    if (file.is === 'open' && told.size === 0) watchAll(file.first);
  });
  const models = () => {
    const file = engine.file();
    const first = file.is === 'open' ? file.first : undefined;
    return watchedFirst(first).map(([name, params]) => engine.model(name, params as never) as unknown);
  };
  return { engine, told, models };
}

describe.each(builds)('a build %s', (_, records) => {
  test('shows at once what was kept, and the engine comes to the very same', async () => {
    const shell = shellOf(records());
    const first = openWindow(shell);
    await first.engine.reload();
    await until(() => first.models().every((model) => model !== undefined));
    const passing = startWorker();
    keepViews(first.engine, shell.api, () => passing.engine, 1);
    await until(() => shell.state.kept !== undefined);
    await until(() => passing.ended() === 1);
    const kept = readFirstViews(shell.state.kept!);

    let release = (): void => {};
    const again = openWindow(shell, new Promise((go) => (release = go)));
    const reloading = again.engine.reload();
    await until(() => again.engine.file().is === 'open');
    expect(again.engine.file()).toMatchObject({ first: kept.first });
    const shown = again.models();
    expect(shown).toEqual(first.models());
    expect(shown.every((model) => model !== undefined)).toBe(true);
    again.told.clear();
    release();
    await reloading;
    await pause();
    // The engine's own have come: not one list or line is another, and nobody was told of anything.
    for (const [i, model] of again.models().entries()) expect(model).toBe(shown[i]);
    expect([...again.told]).toEqual([]);
  });
});

test('an edit that is asked for before the engine is ready waits for it and is made', async () => {
  const shell = shellOf(example('as-first-drawn'));
  const first = openWindow(shell);
  await first.engine.reload();
  keepViews(first.engine, shell.api, () => startWorker().engine, 1);
  await until(() => shell.state.kept !== undefined);

  let release = (): void => {};
  const { engine } = openWindow(shell, new Promise((go) => (release = go)));
  const reloading = engine.reload();
  await until(() => engine.file().is === 'open');
  const parts = () => engine.model('summary', null)?.parts.map(({ name }) => name) ?? [];
  const before = parts();
  expect(before.length).toBeGreaterThan(1);
  const edit = engine.run('part-add', { set: { name: 'late comer' } });
  await pause();
  expect(parts()).toEqual(before);
  release();
  await reloading;
  expect(await edit).toMatchObject({ ok: true });
  expect(parts()).toEqual([...before, 'late comer']);
  // Asked anew, a view is the engine's own: nothing that was kept comes back.
  const unwatched = engine.model('findings', { part: null });
  expect(unwatched?.some(({ partName }) => partName === 'late comer')).toBe(true);
});

test('a page that shows a build already goes on from that when it is loaded anew', async () => {
  const shell = shellOf(example('as-first-drawn'));
  const { engine, models } = openWindow(shell);
  await engine.reload();
  keepViews(engine, shell.api, () => startWorker().engine, 1);
  await until(() => shell.state.kept !== undefined);
  const before = models();
  await engine.run('part-add', { set: { name: 'not on disk' } });
  await engine.reload();
  expect(models()).toEqual(before);
});

test('nothing is worked out while nothing is open, or what was kept is there already', async () => {
  const shell = shellOf([defaultSettings('Test')]);
  shell.state.kept = '{"models":[]}';
  const { engine } = openWindow(shell);
  let started = 0;
  keepViews(
    engine,
    shell.api,
    () => {
      started++;
      return startWorker().engine;
    },
    1,
  );
  await pause();
  expect(shell.state.asked).toBe(0);
  await engine.reload();
  await until(() => shell.state.asked > 0);
  await pause();
  expect(started).toBe(0);
});
