import type { IdSource } from '../../shared/base/ids.ts';
import { type CommandId, commands, runCommand } from '../../shared/build/commands/registry.ts';
import { type BuildDiff, isEmpty } from '../../shared/build/diff.ts';
import type { Build, BuildRecord, RecordId } from '../../shared/build/records.ts';
import { refusalWords } from '../../shared/build/refusals.ts';
import { createWorks } from '../../shared/check/create-works.ts';
import { createBuildIndex } from './build-index.ts';
import { makePatch } from './patch.ts';
import type { FromWorker, RunAnswer, ToWorker, ViewChange } from './protocol.ts';
import type { Scene, SceneChange } from './view.ts';
import { asks, views } from './views.ts';

interface Watched {
  readonly key: string;
  readonly params: unknown;
  readonly compute: (scene: Scene, params: never, change: SceneChange | undefined) => unknown;
  /** What the window holds; undefined before the first model. */
  sent: unknown;
}

interface HostTools {
  readonly newId: IdSource;
  /** The present moment, ISO 8601, UTC. */
  readonly now: () => string;
}

/** The engine behind the window: holds the build, runs commands, keeps watched views up to date. One message at a time. */
export function createHost(post: (message: FromWorker) => void, tools: HostTools): (message: ToWorker) => void {
  let scene: Scene | undefined;
  const watched = new Map<string, Watched>();

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
  const reopen = (watch: Watched): Watched => ({ ...watch, compute: openView(watch.key) });
  const take = (diffs: readonly BuildDiff[]) => {
    if (scene === undefined) return;
    for (const diff of diffs) {
      if (isEmpty(diff)) continue;
      const change = scene.works.update(diff);
      scene.index.update(diff);
      refresh(watched.values(), { ...change, diff });
    }
  };
  const load = (records: readonly BuildRecord[] | undefined) => {
    scene = undefined;
    for (const [key, watch] of watched) watched.set(key, reopen(watch));
    if (records !== undefined) {
      const build: Build = new Map<RecordId, BuildRecord>(records.map((record) => [record.id, record]));
      scene = { works: createWorks(build), index: createBuildIndex(build) };
    }
    refresh(watched.values(), undefined);
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
      case 'close':
        return load(undefined);
      case 'watch': {
        const watch: Watched = {
          key: message.key,
          params: message.params,
          compute: openView(message.key),
          sent: undefined,
        };
        watched.set(message.key, watch);
        return refresh([watch], undefined);
      }
      case 'unwatch':
        watched.delete(message.key);
        return;
      case 'run':
        return post({ type: 'answer', call: message.call, value: run(message.command, message.params) });
      case 'apply':
        take(message.diffs);
        return post({ type: 'answer', call: message.call, value: undefined });
      case 'ask': {
        const ask = asks[message.name as keyof typeof asks];
        const value = scene === undefined ? undefined : ask(scene, message.params as never);
        return post({ type: 'answer', call: message.call, value });
      }
    }
  };
  return (message) => {
    try {
      handle(message);
    } catch (error) {
      post({
        type: 'broken',
        call: 'call' in message ? message.call : undefined,
        message: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
    }
  };
}

/** A key is the view's name, a space, and its parameters as JSON. */
function openView(key: string): Watched['compute'] {
  const name = key.slice(0, key.indexOf(' '));
  const view = views[name as keyof typeof views];
  if (view === undefined) throw new Error(`There is no view "${name}".`);
  return view.open() as Watched['compute'];
}
