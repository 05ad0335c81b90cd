import { openStore } from '../../src/main/store/open-store.ts';
import type { Store } from '../../src/main/store/store.ts';
import { apply } from '../../src/shared/build/diff.ts';
import type { Build, BuildRecord, RecordId } from '../../src/shared/build/records.ts';
import { startChild } from './run-child.ts';
import { emptyModel, follow, type Model, partNumbered, type Stroke } from './strokes.ts';

export interface Lives {
  readonly bundle: string;
  readonly file: string;
  readonly kills: number;
  readonly random: () => number;
}

/**
 * Lets a program edit a build and kills it at a random moment, again and again. After each kill every acknowledged edit
 * must be there, at most the one that was under way besides, and the journal must replay to the document.
 * @returns how many edits were acknowledged in all.
 * @throws when anything is not as it must be.
 */
export async function killAndCheck({ bundle, file, kills, random }: Lives): Promise<number> {
  let model = emptyModel;
  let acknowledged = 0;
  let nextNumber = 1;
  for (let life = 0; life < kills; life++) {
    const seed = Math.floor(random() * 2 ** 31);
    const child = startChild(bundle, [file, String(nextNumber), String(seed)]);
    // Now and then it dies over the opening, else somewhere among its first edits.
    const opening = random() < 0.1;
    const kill = () => child.process.kill('SIGKILL');
    if (opening) setTimeout(kill, random() * 250);
    let underWay: Stroke | undefined;
    let timed = opening;
    for await (const line of child.lines) {
      if (!timed) setTimeout(kill, random() * 40);
      timed = true;
      const { will, did } = JSON.parse(line) as { will?: Stroke; did?: Stroke };
      if (will) underWay = will;
      if (will?.do === 'add') nextNumber = will.n + 1;
      if (did) {
        model = follow(model, did);
        underWay = undefined;
        acknowledged += 1;
      }
    }
    await child.gone;
    if (child.process.signalCode !== 'SIGKILL') throw new Error(`life ${life}: the program ended by itself`);
    model = await check(file, model, underWay, `life ${life}, seed ${seed}`);
  }
  return acknowledged;
}

async function check(file: string, model: Model, underWay: Stroke | undefined, where: string): Promise<Model> {
  const opened = await openStore(file);
  if (!opened.ok) throw new Error(`${where}: ${JSON.stringify(opened.error)}`);
  const store = opened.value;
  try {
    if (store.readOnly) throw new Error(`${where}: a dead program still holds the file`);
    const loaded = await store.load();
    if (!loaded.ok) throw new Error(`${where}: ${JSON.stringify(loaded.error)}`);
    const { revision, undo, redo } = loaded.value;
    const isNew = underWay !== undefined && revision === model.revision + 1;
    const expected = isNew ? follow(model, underWay) : model;
    same(where, 'revision', revision, expected.revision);
    const label = (n: number | undefined) => (n === undefined ? undefined : `add ${n}`);
    same(where, 'undo', undo, label(expected.past.at(-1)));
    same(where, 'redo', redo, label(expected.future[0]));
    const records = JSON.parse(loaded.value.records) as BuildRecord[];
    const parts = records.filter(({ kind }) => kind === 'part');
    same(where, 'parts', byId(parts), byId(expected.past.map(partNumbered)));
    same(where, 'replay of the journal', byId([...(await replayed(store)).values()]), byId(records));
    return await stepBackAndForth(store, expected, where);
  } finally {
    await store.close();
  }
}

/** Undo and redo must work on what the crash left. */
async function stepBackAndForth(store: Store, model: Model, where: string): Promise<Model> {
  if (model.past.length === 0) return model;
  const undone = await store.step('undo', model.revision);
  const redone = await store.step('redo', model.revision + 1);
  if (!undone.ok || !redone.ok) throw new Error(`${where}: undo and redo: ${JSON.stringify([undone, redone])}`);
  return { ...model, revision: model.revision + 2 };
}

async function replayed(store: Store): Promise<Build> {
  let build: Build = new Map<RecordId, BuildRecord>();
  for (const { state, diff } of await store.journal()) {
    if (state === 'first' || state === 'done') build = apply(build, diff);
  }
  return build;
}

const byId = (records: readonly BuildRecord[]): readonly BuildRecord[] =>
  [...records].sort((a, b) => (a.id < b.id ? -1 : 1));

function same(where: string, what: string, found: unknown, expected: unknown): void {
  const [a, b] = [JSON.stringify(found), JSON.stringify(expected)];
  if (a !== b) throw new Error(`${where}: ${what}: found ${a.slice(0, 400)}, expected ${b.slice(0, 400)}`);
}
