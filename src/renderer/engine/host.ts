import type { IdSource, PartId } from '../../shared/base/ids.ts';
import { type CommandId, commands, runCommand } from '../../shared/build/commands/registry.ts';
import { type BuildDiff, isEmpty } from '../../shared/build/diff.ts';
import type { Build, BuildRecord, RecordId } from '../../shared/build/records.ts';
import { refusalWords } from '../../shared/build/refusals.ts';
import { createWorks } from '../../shared/check/create-works.ts';
import type { WorksChange } from '../../shared/check/works.ts';
import type { Kernel } from '../../shared/solid/manifold/kernel.ts';
import { createBuildIndex } from './build-index.ts';
import { writeFirstViews } from './first-views.ts';
import { createMeasuring, type MeasuringPort } from './measuring/measuring.ts';
import { createMeasuringHost } from './measuring/measuring-host.ts';
import type { FromMeasuring } from './measuring/protocol.ts';
import { makePatch, type Patch } from './patch.ts';
import { createPauses, type Later, type Left } from './pauses.ts';
import type { FromWorker, RunAnswer, ToWorker, ViewChange } from './protocol.ts';
import { createKernelLoader } from './solid/kernel-loader.ts';
import { transferOf } from './transfer.ts';
import type { Scene, SceneChange, View } from './view.ts';
import { asks, views } from './views.ts';

interface Watched {
  readonly key: string;
  readonly params: unknown;
  readonly compute: (scene: Scene, params: never, change: SceneChange | undefined) => unknown;
  readonly late: boolean;
  readonly ofSolid: boolean;
  /** A late view that an edit may have changed. */
  stale: boolean;
  /** What the window holds; undefined before the first model. */
  sent: unknown;
}

interface HostTools {
  readonly newId: IdSource;
  /** The present moment, ISO 8601, UTC. */
  readonly now: () => string;
  readonly later?: Later;
  /** Fetches the kernel of solids; without it there are none. */
  readonly loadKernel?: () => Promise<Kernel>;
  /** Brings up the worker that measures and draws sheets; without it that is done here, in pieces. */
  readonly startMeasuring?: (listener: (message: FromMeasuring) => void) => MeasuringPort;
}

const nothing: BuildDiff = { added: [], updated: [], removed: [] };
const noChange: WorksChange = { drawing: { dimensions: [], axes: [] }, parts: [], findingsChanged: false };

/** The engine behind the window: holds the build, runs commands, keeps watched views up to date. One message at a time. */
export function createHost(
  post: (message: FromWorker, transfer?: readonly ArrayBuffer[]) => void,
  tools: HostTools,
): (message: ToWorker) => void {
  let scene: Scene | undefined;
  const watched = new Map<string, Watched>();
  const { later = timer } = tools;
  const loader = createKernelLoader(tools.loadKernel, () => {
    if (scene !== undefined) show({ ...noChange, diff: nothing });
  });

  const measureHere = (listener: (message: FromMeasuring) => void): MeasuringPort => ({
    post: createMeasuringHost((message) => guarded(() => listener(message), undefined), {
      later: (run) => void timer(run, 0),
      // That it cannot be had is told by the loader.
      loadKernel: async () => tools.loadKernel?.().catch(() => undefined),
    }),
  });
  const measuring = createMeasuring(tools.startMeasuring ?? measureHere, {
    measured: (part, bodies, measured) => {
      if (scene !== undefined) changed(part, scene.works.takeSolid(part, bodies, measured));
    },
    drawn: (key, patch) => {
      const watch = watched.get(key);
      if (watch?.sent === undefined) return;
      const change: [string, Patch][] = patch === undefined ? [] : [['sheet', patch]];
      post({ type: 'views', changes: [{ key, patch: { op: 'keys', change, gone: [] } }] });
      refresh([watch], undefined);
    },
    broken: (message) => post({ type: 'broken', call: undefined, message }),
  });

  const refresh = (which: Iterable<Watched>, change: SceneChange | undefined) => {
    const changes: ViewChange[] = [];
    for (const watch of which) {
      const model = scene === undefined ? undefined : watch.compute(scene, watch.params as never, change);
      const patch = makePatch(watch.sent, model);
      watch.sent = model;
      if (patch !== undefined) changes.push({ key: watch.key, patch });
    }
    if (changes.length > 0) post({ type: 'views', changes });
  };
  /** Brings every view up to date: quick ones now, late ones and solids in the pauses that follow. */
  const show = (change: SceneChange | undefined) => {
    const quick: Watched[] = [];
    for (const watch of watched.values()) {
      if (watch.late) watch.stale = true;
      else quick.push(watch);
    }
    refresh(quick, change);
    pauses.wake();
  };
  /**
   * One piece of the work that can wait: live figures of a part on show, then the late views, then what makes the first edit of
   * a part on show as quick as the next. Solids are measured elsewhere: that of a part on show is asked for at once, those that
   * no one looks at when it is quiet.
   */
  const piece = (isQuiet: boolean): Left => {
    if (scene === undefined) return 'nothing';
    const { solids, index, works } = scene;
    const pending = solids.pending();
    const onShow = new Set<unknown>();
    for (const { ofSolid, params } of watched.values()) if (ofSolid) onShow.add((params as { part: PartId }).part);
    // The kernel is fetched when it is wanted, or when the window has come to rest after opening.
    const wants = loader.state === 'not asked' && index.parts().some(({ id }) => index.bodiesOf(id).length > 0);
    if (wants && (isQuiet || onShow.size > 0)) loader.ask();
    const next = pending.find((part) => onShow.has(part));
    if (next !== undefined && solids.wantsLive(next)) return changed(next, works.computeLive(next));
    if (next !== undefined) measuring.measure(next, solids.bodiesOf(next));
    const stale = [...watched.values()].filter((watch) => watch.stale);
    if (stale.length > 0) {
      for (const watch of stale) watch.stale = false;
      refresh(stale, undefined);
      return pending.length > 0 ? 'unseen' : 'more';
    }
    // One at a time, so that a part that comes on show need not wait for all the others.
    const asked = pending.some((part) => measuring.isAsked(part, solids.bodiesOf(part)));
    if (isQuiet && !asked && pending[0] !== undefined) measuring.measure(pending[0], solids.bodiesOf(pending[0]));
    const unready = index.parts().find(({ id }) => onShow.has(id) && solids.wantsLive(id));
    if (unready !== undefined && solids.computeLive(unready.id)) return 'more';
    return (pending.length > 0 && !asked && !isQuiet) || (wants && loader.state === 'not asked') ? 'unseen' : 'nothing';
  };
  const pauses = createPauses(later, (isQuiet) => {
    try {
      return piece(isQuiet);
    } catch (error) {
      post(brokenBy(error, undefined));
      return 'nothing';
    }
  });
  const changed = (part: PartId, change: WorksChange): Left => {
    show({ ...change, parts: [...new Set([...change.parts, part])], diff: nothing });
    return 'more';
  };
  const reopen = (watch: Watched): Watched => ({ ...watch, ...openView(watch.key), sent: watch.sent });
  const take = (diffs: readonly BuildDiff[]) => {
    if (scene === undefined) return;
    for (const diff of diffs) {
      if (isEmpty(diff)) continue;
      const change = scene.works.update(diff);
      scene.index.update(diff);
      show({ ...change, diff });
    }
  };
  const close = () => {
    scene?.solids.drop();
    measuring.forgetAll();
    scene = undefined;
    for (const [key, watch] of watched) watched.set(key, reopen(watch));
  };
  const load = (records: readonly BuildRecord[]) => {
    close();
    const build: Build = new Map<RecordId, BuildRecord>(records.map((record) => [record.id, record]));
    const index = createBuildIndex(build);
    // The window stands up around the first part while the rest is worked out.
    post({ type: 'read', first: index.parts()[0]?.id });
    const works = createWorks(build, () => loader.kernel);
    scene = {
      works,
      index,
      solids: works.solids,
      measuring,
      get kernel() {
        return loader.state;
      },
    };
    show(undefined);
  };
  const run = (id: string, params: unknown): RunAnswer => {
    if (!Object.hasOwn(commands, id)) throw new Error(`There is no command "${id}".`);
    if (scene === undefined) return { ok: false, code: 'no-build', sentence: 'No build is open.' };
    const result = runCommand(scene.works.build, id as CommandId, params as never, {
      newId: tools.newId,
      now: tools.now(),
    });
    if (!result.ok) {
      const { sentence, remedy } = refusalWords(result.error);
      return { ok: false, code: result.error.code, sentence: `${sentence} ${remedy}` };
    }
    take([result.value.diff]);
    return { ok: true, ...result.value };
  };

  const handle = (message: ToWorker) => {
    switch (message.type) {
      case 'load':
        load(JSON.parse(message.records) as BuildRecord[]);
        return post({ type: 'answer', call: message.call, value: undefined });
      case 'first-views':
        return post({ type: 'answer', call: message.call, value: scene && writeFirstViews(scene) });
      case 'close':
        close();
        return refresh(watched.values(), undefined);
      case 'watch': {
        const watch: Watched = {
          key: message.key,
          params: message.params,
          ...openView(message.key),
          sent: undefined,
        };
        watched.set(message.key, watch);
        if (watch.late || watch.ofSolid) pauses.wake();
        return watch.late ? undefined : refresh([watch], undefined);
      }
      case 'unwatch':
        watched.delete(message.key);
        measuring.leave(message.key);
        return;
      case 'run':
        return post({ type: 'answer', call: message.call, value: run(message.command, message.params) });
      case 'apply':
        take(message.diffs);
        return post({ type: 'answer', call: message.call, value: undefined });
      case 'ask': {
        const ask = asks[message.name as keyof typeof asks];
        const value: unknown = scene === undefined ? undefined : ask(scene, message.params as never);
        const answer = (found: unknown) =>
          post({ type: 'answer', call: message.call, value: found }, transferOf(found));
        if (!(value instanceof Promise)) return answer(value);
        return void value.then(answer, (error: unknown) => post(brokenBy(error, message.call)));
      }
    }
  };
  const guarded = (run: () => void, call: number | undefined) => {
    try {
      run();
    } catch (error) {
      post(brokenBy(error, call));
    }
  };
  return (message) => {
    pauses.disturb();
    guarded(() => handle(message), 'call' in message ? message.call : undefined);
  };
}

const timer: Later = (run, afterMs) => {
  const number = setTimeout(run, afterMs);
  return () => clearTimeout(number);
};

const brokenBy = (error: unknown, call: number | undefined): FromWorker => ({
  type: 'broken',
  call,
  message: error instanceof Error ? (error.stack ?? error.message) : String(error),
});

/** A key is the view's name, a space, and its parameters as JSON. */
function openView(key: string): Pick<Watched, 'compute' | 'late' | 'ofSolid' | 'stale'> {
  const name = key.slice(0, key.indexOf(' '));
  const view = views[name as keyof typeof views] as View<never, unknown> | undefined;
  if (view === undefined) throw new Error(`There is no view "${name}".`);
  const late = view.late === true;
  return { compute: view.open(key), late, ofSolid: view.ofSolid === true, stale: late };
}
