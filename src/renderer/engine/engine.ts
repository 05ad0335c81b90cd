import type { PartId } from '../../shared/base/ids.ts';
import type { CommandId, ParamsOf } from '../../shared/build/commands/registry.ts';
import { type BuildDiff, invert, isEmpty } from '../../shared/build/diff.ts';
import type { RecordId } from '../../shared/build/records.ts';
import type { CommitError, HistoryLabels, OpenError, ReadOnlyReason, WaywrightApi } from '../../shared/ipc/contract.ts';
import { type FirstViews, readFirstViews, viewKey } from './first-views.ts';
import { applyPatch, makePatch } from './patch.ts';
import type { FromWorker, RunAnswer, ToWorker } from './protocol.ts';
import { markStage } from './stages.ts';
import type { AskAnswer, AskName, AskParams, ViewModel, ViewName, ViewParams } from './views.ts';

/** What is open in this window, and how its saving stands. */
export type FileState =
  | { readonly is: 'loading' }
  | { readonly is: 'none' }
  | { readonly is: 'failed'; readonly error: OpenError }
  | OpenFile;

export interface OpenFile extends HistoryLabels {
  readonly is: 'open';
  readonly fileName: string;
  readonly folder: string;
  readonly readOnly: ReadOnlyReason | undefined;
  /** The first part as the build was opened. */
  readonly first: PartId | undefined;
  /** Edits shown but not yet on disk, oldest first. */
  readonly saving: readonly string[];
  /** Set when an edit could not be put on disk: further edits wait until it is tried again or taken back. */
  readonly halted: CommitError | undefined;
}

export type RunOutcome =
  /** `added`: ids of new records, in the order of the diff. */
  | { readonly ok: true; readonly label: string; readonly added: readonly RecordId[] }
  | { readonly ok: false; readonly code: string; readonly sentence: string };

/** The worker as the window speaks to it; a test may put the host itself behind it. */
export interface EnginePort {
  post(message: ToWorker): void;
  listen(listener: (message: FromWorker) => void): void;
}

export interface Engine {
  /** (Re)loads this window's build from the shell. */
  reload(): Promise<void>;
  /** Makes an edit: shown at once, then put on disk in order. Refused while saving is halted or the build is read-only. */
  run<C extends CommandId>(command: C, params: ParamsOf<C>): Promise<RunOutcome>;
  ask<N extends AskName>(name: N, params: AskParams<N>): Promise<AskAnswer<N> | undefined>;
  step(direction: 'undo' | 'redo'): Promise<RunOutcome>;
  tryAgain(): Promise<void>;
  takeBack(): Promise<void>;
  file(): FileState;
  onFile(listener: () => void): () => void;
  /** Keeps a view up to date for as long as someone listens. */
  watch(name: ViewName, params: unknown, listener: () => void): () => void;
  /** The latest model; undefined until it comes. */
  model<N extends ViewName>(name: N, params: ViewParams<N>): ViewModel<N> | undefined;
}

interface Pending {
  readonly label: string;
  readonly diff: BuildDiff;
}

interface Watched {
  readonly listeners: Set<() => void>;
  model: unknown;
  /** The model is one that was kept; the engine's own will take its place. */
  isKept: boolean;
}

const waits: RunOutcome = {
  ok: false,
  code: 'halted',
  sentence: 'This edit waits: an earlier one is not on disk yet. Try that again or take it back first.',
};
const readOnlyRefusal: RunOutcome = {
  ok: false,
  code: 'read-only',
  sentence: 'This build is open for reading only. Save a copy to edit it.',
};
const noBuild: RunOutcome = { ok: false, code: 'no-build', sentence: 'No build is open. Make or open one first.' };

// A view that someone stops watching is kept for a moment: going from part to part and back must not flicker.
const UNWATCH_AFTER_MS = 2_000;

const failed = (error: OpenError): FileState => ({ is: 'failed', error });

/** @param painted resolves when what was just put into the page is on the screen */
export function createEngine(
  port: EnginePort,
  api: Pick<WaywrightApi, 'invoke'>,
  painted: () => Promise<void> = async () => {},
): Engine {
  let file: FileState = { is: 'loading' };
  let revision = 0;
  let queue: readonly Pending[] = [];
  let sending: Promise<void> | undefined;
  let calls = 0;
  let loads = 0;
  /** The worker has been given the build that is on show. */
  let given: Promise<void> = Promise.resolve();
  /** Hears which part of the build that is being loaded comes first. */
  let onRead: (first: PartId | undefined) => void = () => {};
  /** What is shown until the engine has worked out the build that is being loaded. */
  let kept: FirstViews | undefined;
  const fileListeners = new Set<() => void>();
  const watched = new Map<string, Watched>();
  const waiting = new Map<number, { resolve(value: unknown): void; reject(error: Error): void }>();

  const setFile = (next: FileState) => {
    file = next;
    for (const listener of fileListeners) listener();
  };
  const close = (next: FileState) => {
    port.post({ type: 'close' });
    setFile(next);
  };
  const changeOpen = (change: Partial<OpenFile>) => {
    if (file.is === 'open') setFile({ ...file, ...change });
  };
  /** @returns whether it is shown. */
  const showKept = (views: FirstViews): boolean => {
    // A page that shows something already goes on from there.
    if ([...watched.values()].some(({ model }) => model !== undefined)) return false;
    kept = views;
    for (const [key, watch] of watched) {
      watch.model = views.models.get(key);
      watch.isKept = watch.model !== undefined;
    }
    onRead(views.first);
    for (const { isKept, listeners } of watched.values()) if (isKept) for (const listener of listeners) listener();
    return true;
  };
  type Call = ToWorker extends infer M ? (M extends { call: number } ? Omit<M, 'call'> : never) : never;
  const call = (message: Call): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const number = ++calls;
      waiting.set(number, { resolve, reject });
      port.post({ ...message, call: number } as ToWorker);
    });

  port.listen((message) => {
    if (message.type === 'views') {
      const touched = new Set<() => void>();
      for (const { key, patch } of message.changes) {
        const watch = watched.get(key);
        if (watch === undefined) continue;
        const before = watch.model;
        // What was kept is what the engine comes to: whatever is the same stays the same, and is not drawn anew.
        const change = watch.isKept && patch.op === 'set' ? makePatch(before, patch.value) : patch;
        watch.isKept = false;
        if (change === undefined) continue;
        watch.model = applyPatch(before, change);
        for (const listener of watch.listeners) touched.add(listener);
      }
      for (const listener of touched) listener();
      return;
    }
    if (message.type === 'read') {
      onRead(message.first);
      return;
    }
    const waiter = message.call === undefined ? undefined : waiting.get(message.call);
    if (message.call !== undefined) waiting.delete(message.call);
    if (message.type === 'answer') waiter?.resolve(message.value);
    else {
      const error = new Error(message.message);
      if (waiter === undefined) console.error(error);
      else waiter.reject(error);
    }
  });

  const sendQueue = async () => {
    for (let next = queue[0]; next !== undefined; next = queue[0]) {
      const answer = await api.invoke('build:commit', { revision, label: next.label, diff: next.diff });
      if (!answer.ok) {
        changeOpen({ halted: answer.error });
        return;
      }
      revision = answer.value.revision;
      queue = queue.slice(1);
      // While more edits wait, the labels on show are already those of the latest.
      const labels = queue.length === 0 ? { undo: answer.value.undo, redo: answer.value.redo } : {};
      changeOpen({ saving: queue.map((p) => p.label), ...labels });
    }
  };
  const send = (): Promise<void> => {
    sending ??= sendQueue().finally(() => {
      sending = undefined;
    });
    return sending;
  };
  // An edit is worked out on the build as the last one left it, and a step needs the revision that the last one made:
  // keys held down ask for many at once, and each waits for the one before.
  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const result = turn.then(work);
    turn = result.catch(() => undefined);
    return result;
  };
  const refusal = (): RunOutcome | undefined => {
    if (file.is !== 'open') return noBuild;
    if (file.readOnly !== undefined) return readOnlyRefusal;
    return file.halted === undefined ? undefined : waits;
  };

  const engine: Engine = {
    async reload() {
      setFile({ is: 'loading' });
      const answer = await api.invoke('build:load', undefined);
      queue = [];
      if (!answer.ok || answer.value === undefined) return close(answer.ok ? { is: 'none' } : failed(answer.error));
      const { records, keptViews, revision: at, ...opened } = answer.value;
      revision = at;
      markStage('read');
      // The window stands up while the engine works.
      onRead = (first) => {
        onRead = () => {};
        setFile({ is: 'open', ...opened, first, saving: [], halted: undefined });
      };
      const load = ++loads;
      // What is on the screen at once has the processors for itself until it is there.
      given = keptViews !== undefined && showKept(readFirstViews(keptViews)) ? painted() : Promise.resolve();
      const workedOut = given.then(() =>
        load === loads ? Promise.allSettled([call({ type: 'load', records })]) : Promise.allSettled([undefined]),
      );
      // Edits wait until the rows are known to be sound.
      const verified = given.then(() => api.invoke('build:verify', undefined));
      turn = Promise.all([turn, verified]);
      const [verdict, [work]] = await Promise.all([verified, workedOut]);
      kept = undefined;
      if (!verdict.ok) return close(failed(verdict.error));
      if (work.status === 'rejected') throw work.reason;
      markStage('worked out');
    },
    run: (command, params) =>
      inTurn(async () => {
        const no = refusal();
        if (no !== undefined) return no;
        const answer = (await call({ type: 'run', command, params })) as RunAnswer;
        if (!answer.ok) return answer;
        if (!isEmpty(answer.diff)) {
          queue = [...queue, { label: answer.label, diff: answer.diff }];
          changeOpen({ saving: queue.map((p) => p.label), undo: answer.label, redo: undefined });
          if (file.is === 'open' && file.halted === undefined) void send();
        }
        return { ok: true, label: answer.label, added: answer.diff.added.map((record) => record.id) };
      }),
    ask: async (name, params) => {
      await given;
      return (await call({ type: 'ask', name, params })) as never;
    },
    step: (direction) =>
      inTurn(async () => {
        await sending;
        const no = refusal();
        if (no !== undefined) return no;
        const answer = await api.invoke('build:step', { revision, direction });
        if (!answer.ok) {
          if (answer.error.code === 'nothing-to-step')
            return { ok: false, code: 'nothing-to-step', sentence: `There is nothing to ${direction}.` };
          changeOpen({ halted: answer.error });
          return waits;
        }
        const { diff, label, undo, redo } = answer.value;
        revision = answer.value.revision;
        await call({ type: 'apply', diffs: [diff] });
        changeOpen({ undo, redo });
        return { ok: true, label, added: diff.added.map((record) => record.id) };
      }),
    async tryAgain() {
      changeOpen({ halted: undefined });
      await send();
    },
    takeBack: () =>
      inTurn(async () => {
        if (file.is !== 'open') return;
        // Another window wrote in between: only what is on disk is true, so everything is read anew.
        if (file.halted?.code === 'stale-revision') return engine.reload();
        const diffs = queue.map((pending) => invert(pending.diff)).reverse();
        queue = [];
        await call({ type: 'apply', diffs });
        changeOpen({ saving: [], halted: undefined });
        // The shell knows the labels of the steps that are on disk; reading the build again would be needless otherwise.
        await engine.reload();
      }),
    file: () => file,
    onFile: (listener) => {
      fileListeners.add(listener);
      return () => fileListeners.delete(listener);
    },
    watch(name, params, listener) {
      const key = viewKey(name, params);
      let watch = watched.get(key);
      if (watch === undefined) {
        const model = kept?.models.get(key);
        watch = { listeners: new Set(), model, isKept: model !== undefined };
        watched.set(key, watch);
        port.post({ type: 'watch', key, name, params });
      }
      const held = watch;
      held.listeners.add(listener);
      return () => {
        held.listeners.delete(listener);
        setTimeout(() => {
          if (held.listeners.size > 0 || watched.get(key) !== held) return;
          watched.delete(key);
          port.post({ type: 'unwatch', key });
        }, UNWATCH_AFTER_MS);
      };
    },
    model: (name, params) => {
      const key = viewKey(name, params);
      const watch = watched.get(key);
      // What is drawn before it is watched shows at once what was kept.
      return (watch === undefined ? kept?.models.get(key) : watch.model) as never;
    },
  };
  return engine;
}
