import { describe, expect, test } from 'vitest';
import { idSource, type PartId } from '../../shared/base/ids.ts';
import { apply, type BuildDiff, invert } from '../../shared/build/diff.ts';
import type { Build, BuildRecord } from '../../shared/build/records.ts';
import { defaultSettings } from '../../shared/build/settings.ts';
import type { Channel, CommitError, Request, Response, WaywrightApi } from '../../shared/ipc/contract.ts';
import { createEngine, type Engine } from './engine.ts';
import { createHost } from './host.ts';
import type { FromWorker } from './protocol.ts';

/** A shell in memory that keeps a journal as the store does, and refuses when told to. */
function shellInMemory(records: readonly BuildRecord[]) {
  let build: Build = new Map(records.map((record) => [record.id, record]));
  let revision = 0;
  let past: { label: string; diff: BuildDiff }[] = [];
  let future: { label: string; diff: BuildDiff }[] = [];
  const state = {
    refuse: undefined as CommitError | undefined,
    verdict: { ok: true, value: undefined } as Response<'build:verify'>,
    kept: undefined as string | undefined,
    commits: 0,
    atOnce: 0,
    mostAtOnce: 0,
  };
  const saved = () => ({ revision, undo: past.at(-1)?.label, redo: future.at(-1)?.label });
  const handlers: { [C in Channel]?: (request: Request<C>) => Promise<Response<C>> } = {
    'build:load': async () => ({
      ok: true,
      value: {
        ...saved(),
        fileName: 'test',
        folder: '/',
        records: JSON.stringify([...build.values()]),
        readOnly: undefined,
        keptViews: state.kept,
      },
    }),
    'build:verify': async () => state.verdict,
    'build:commit': async (request) => {
      state.commits++;
      state.mostAtOnce = Math.max(state.mostAtOnce, ++state.atOnce);
      await new Promise((go) => setTimeout(go, 1));
      state.atOnce--;
      if (state.refuse !== undefined) return { ok: false, error: state.refuse };
      if (request.revision !== revision) return { ok: false, error: { code: 'stale-revision', current: revision } };
      build = apply(build, request.diff);
      revision++;
      past = [...past, { label: request.label, diff: request.diff }];
      future = [];
      return { ok: true, value: saved() };
    },
    'build:step': async ({ direction, revision: asked }) => {
      await new Promise((go) => setTimeout(go, 1));
      if (asked !== revision) return { ok: false, error: { code: 'stale-revision', current: revision } };
      const step = direction === 'undo' ? past.at(-1) : future.at(-1);
      if (step === undefined) return { ok: false, error: { code: 'nothing-to-step' } };
      const diff = direction === 'undo' ? invert(step.diff) : step.diff;
      build = apply(build, diff);
      revision++;
      past = direction === 'undo' ? past.slice(0, -1) : [...past, step];
      future = direction === 'undo' ? [...future, step] : future.slice(0, -1);
      return { ok: true, value: { ...saved(), diff, label: step.label } };
    },
  };
  const api: Pick<WaywrightApi, 'invoke'> = {
    invoke: (channel, request) => {
      const handler = handlers[channel];
      if (handler === undefined) throw new Error(`The test has no ${channel}.`);
      // What crosses is cloned, as between processes.
      return handler(structuredClone(request) as never) as never;
    },
  };
  return {
    api,
    state,
    names: () => [...build.values()].flatMap((each) => (each.kind === 'part' ? [each.name] : [])).sort(),
  };
}

async function start(records: readonly BuildRecord[] = [defaultSettings('Test machine')]) {
  const shell = shellInMemory(records);
  let seed = 1;
  const newId = idSource(() => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return seed >>> 16;
  });
  let toWindow: (message: FromWorker) => void = () => {};
  const host = createHost((message) => queueMicrotask(() => toWindow(structuredClone(message))), {
    newId,
    now: () => '2026-01-01T00:00:00.000Z',
  });
  const engine = createEngine(
    {
      post: (message) => queueMicrotask(() => host(structuredClone(message))),
      listen: (listener) => {
        toWindow = listener;
      },
    },
    shell.api,
  );
  engine.watch('summary', null, () => {});
  await engine.reload();
  return { engine, shell };
}

const open = (engine: Engine) => {
  const file = engine.file();
  if (file.is !== 'open') throw new Error('not open');
  return file;
};
const shown = (engine: Engine) => engine.model('summary', null)?.parts.map((part) => part.name);
const settled = async (engine: Engine) => {
  for (let i = 0; i < 200 && open(engine).saving.length > 0 && open(engine).halted === undefined; i++)
    await new Promise((go) => setTimeout(go, 1));
};
const addPart = (engine: Engine, name: string) => engine.run('part-add', { set: { name } });

test('a build whose rows prove damaged is not shown as open, and takes no edit', async () => {
  const { engine, shell } = await start();
  shell.state.verdict = { ok: false, error: { code: 'damaged', path: '/test', detail: 'a row' } };
  const reloading = engine.reload();
  const edit = addPart(engine, 'base');
  await reloading;
  expect(engine.file()).toMatchObject({ is: 'failed', error: { code: 'damaged' } });
  expect((await edit).ok).toBe(false);
  expect(shell.state.commits).toBe(0);
});

describe('the engine of the window', () => {
  test('an edit is shown before it is on disk, and says so', async () => {
    const { engine, shell } = await start();
    const outcome = await addPart(engine, 'base');
    expect(outcome).toMatchObject({ ok: true, added: [expect.stringMatching(/^part:/)] });
    expect(shown(engine)).toEqual(['base']);
    expect(open(engine).saving).toHaveLength(1);
    expect(shell.names()).toEqual([]);
    await settled(engine);
    expect(open(engine).saving).toEqual([]);
    expect(shell.names()).toEqual(['base']);
    expect(open(engine).undo).toContain('base');
  });

  test('many edits go to disk one at a time, in order', async () => {
    const { engine, shell } = await start();
    await Promise.all(Array.from({ length: 20 }, (_, i) => addPart(engine, `part ${i}`)));
    await settled(engine);
    expect(shell.state.mostAtOnce).toBe(1);
    expect(shell.state.commits).toBe(20);
    expect(shell.names()).toHaveLength(20);
  });

  test("keys held down: undo, redo and edits asked for at once take turns, and nothing is taken for a stranger's edit", async () => {
    const { engine, shell } = await start();
    const steps = await Promise.all([
      ...Array.from({ length: 10 }, (_, i) => addPart(engine, `part ${i}`)),
      ...Array.from({ length: 8 }, () => engine.step('undo')),
      ...Array.from({ length: 3 }, () => engine.step('redo')),
      addPart(engine, 'last'),
      engine.step('undo'),
      addPart(engine, 'very last'),
    ]);
    await settled(engine);
    expect(steps.filter((step) => !step.ok)).toEqual([]);
    expect(open(engine).halted).toBeUndefined();
    expect(shell.names()).toEqual(['part 0', 'part 1', 'part 2', 'part 3', 'part 4', 'very last']);
    expect(shown(engine)?.toSorted()).toEqual(shell.names());
  });

  test('a refused edit halts the saving; further edits wait; trying again puts all of them on disk', async () => {
    const { engine, shell } = await start();
    shell.state.refuse = { code: 'disk-full' };
    await addPart(engine, 'base');
    await addPart(engine, 'column');
    await settled(engine);
    expect(open(engine).halted).toEqual({ code: 'disk-full' });
    expect(open(engine).saving).toHaveLength(2);
    expect(await addPart(engine, 'table')).toMatchObject({ ok: false, code: 'halted' });
    expect(shown(engine)).toEqual(['base', 'column']);

    shell.state.refuse = undefined;
    await engine.tryAgain();
    expect(open(engine)).toMatchObject({ halted: undefined, saving: [] });
    expect(shell.names()).toEqual(['base', 'column']);
  });

  test('taking back leaves what is on disk, and editing goes on', async () => {
    const { engine, shell } = await start();
    await addPart(engine, 'base');
    await settled(engine);
    shell.state.refuse = { code: 'unwritable', detail: 'gone' };
    await addPart(engine, 'column');
    await addPart(engine, 'table');
    await settled(engine);
    await engine.takeBack();
    expect(shown(engine)).toEqual(['base']);
    expect(open(engine)).toMatchObject({ halted: undefined, saving: [] });

    shell.state.refuse = undefined;
    await addPart(engine, 'ram');
    await settled(engine);
    expect(shell.names()).toEqual(['base', 'ram']);
    expect(shown(engine)).toEqual(['base', 'ram']);
  });

  test('undo and redo go through the journal and wait for what is being saved', async () => {
    const { engine, shell } = await start();
    await addPart(engine, 'base');
    await addPart(engine, 'column');
    expect(await engine.step('undo')).toMatchObject({ ok: true });
    expect(shown(engine)).toEqual(['base']);
    expect(shell.names()).toEqual(['base']);
    expect(open(engine).redo).toContain('column');
    await engine.step('redo');
    expect(shown(engine)).toEqual(['base', 'column']);
    await engine.step('undo');
    await engine.step('undo');
    expect(await engine.step('undo')).toMatchObject({ ok: false, code: 'nothing-to-step' });
    expect(shown(engine)).toEqual([]);
  });

  test('a command that refuses says why, and nothing is sent', async () => {
    const { engine, shell } = await start();
    const outcome = await engine.run('part-set', { part: 'part:nowhere' as PartId, set: { name: 'x' } });
    expect(outcome).toMatchObject({ ok: false, code: 'part-not-found' });
    expect(shell.state.commits).toBe(0);
  });

  test('a view watched anew comes whole, and one no longer watched stops', async () => {
    const { engine } = await start();
    const outcome = await addPart(engine, 'base');
    const part = (outcome.ok ? outcome.added[0] : undefined) as PartId;
    let told = 0;
    const stop = engine.watch('part', { part }, () => told++);
    await engine.ask('find', { text: 'base' });
    expect(engine.model('part', { part })?.part.name).toBe('base');
    stop();
    const before = told;
    await engine.run('part-set', { part, set: { name: 'bed' } });
    expect(told).toBe(before);
  });
});

test('what a text would come to is worked out without a trace', async () => {
  const { engine } = await start();
  const base = await addPart(engine, 'base');
  const part = (base.ok ? base.added[0] : undefined) as PartId;
  await engine.run('dimension-add', {
    part,
    measure: { type: 'size', form: 'diameter' },
    set: { name: 'bore', value: '25' },
  });
  const added = await engine.run('dimension-add', {
    part,
    measure: { type: 'size', form: 'diameter' },
    set: { name: 'shaft', value: 'bore - 0.05 mm' },
  });
  const dimension = (added.ok ? added.added[0] : undefined) as `dimension:${string}` as never;
  const ask = (text: string) => engine.ask('preview', { dimension, field: 'value', text });
  expect(await ask('bore / 2')).toEqual({ shown: '12.5 mm', problem: undefined });
  expect(await ask('bor / 2')).toMatchObject({ shown: undefined, problem: { start: 0, end: 3 } });
  expect((await ask('bor / 2'))?.problem?.sentence).toContain('bore');
  expect((await ask('shaft + 1 mm'))?.problem?.sentence).toContain('hangs on itself');
  expect(await ask('')).toEqual({ shown: undefined, problem: undefined });
  const limits = await engine.ask('preview', { dimension, field: 'limits', text: '±0.1' });
  expect(limits?.shown).toContain('24.85');
  engine.watch('part', { part }, () => {});
  await engine.ask('find', { text: '' });
  expect(engine.model('part', { part })?.dimensions[1]?.value).toBe('24.95 mm');
});
