import { usesOf } from '../../build/body-uses.ts';
import type { Machine } from '../../build/machine.ts';
import type { Holding, HoldingWay, Setup } from '../../build/setup.ts';
import type { Remedy, Verdict, VerdictKind } from '../setup-check.ts';
import { clearsAsDrawn, type Judging, judge, judging } from '../verdicts/judge.ts';
import { questionsOf } from '../verdicts/questions.ts';
import { endOf, latheStand, workPieces } from './lathe-stand.ts';
import { bodiesOf, type ResolvedWork, resolveWork } from './resolve-work.ts';
import { type Scene, sceneOf } from './scene.ts';
import type { SetupInput } from './setup-input.ts';

/** Machines that are named, the first of the shop's first. */
const MACHINES_NAMED = 3;

/**
 * Ways to hold and to turn the same work by which all of its verdicts clear, limits counted: end for end, another way of holding that needs nothing
 * more to be said, after a later operation, another machine of its type. What could not be judged before may stay so on the same machine; on another all must be known.
 */
export function waysOut(
  input: SetupInput,
  work: ResolvedWork,
  scene: Scene,
  on: Judging,
  verdicts: readonly Verdict[],
): readonly Remedy[] {
  const { setup, machine } = scene;
  const mayBeUnknown = new Set(verdicts.filter(({ state }) => state === 'unknown').map(({ kind }) => kind));
  const clearsWith = (
    other: Setup,
    there: Machine,
    may: ReadonlySet<VerdictKind>,
    by: ResolvedWork = work,
    judged = on,
  ) => by.worlds !== undefined && allClear(sceneOf(input, by, by.worlds, other, there), judged, may);
  const found: Remedy[] = [];
  if (turnsOrDrills(scene)) {
    const turned: Setup = { ...setup, headEnd: setup.headEnd === 'low' ? 'high' : 'low' };
    if (clearsWith(turned, machine, mayBeUnknown)) found.push({ is: 'end-for-end' });
  }
  for (const holding of otherHoldings(scene)) {
    if (clearsWith({ ...setup, holding }, machine, mayBeUnknown)) found.push({ is: 'holding', holding });
  }
  const later = laterState(input, (state) => {
    const other = { ...setup, state };
    const by = resolveWork({ ...input, setup: other });
    return by.worlds !== undefined && clearsWith(other, machine, mayBeUnknown, by, judging(by.worlds));
  });
  if (later) found.push(later);
  const others = input.machines.filter(({ id, type }) => id !== machine.id && type === machine.type);
  const nothing: ReadonlySet<VerdictKind> = new Set();
  let named = 0;
  for (const other of others) {
    if (named === MACHINES_NAMED) break;
    if (!clearsWith(setup, other, nothing)) continue;
    found.push({ is: 'machine', machine: other.id });
    named++;
  }
  return found;
}

/** End for end means something where one end is different from the other. */
const turnsOrDrills = ({ type }: Scene): boolean => type === 'lathe' || type === 'drill press';

/** Looks as drawn first: most ways fall there. */
function allClear(scene: Scene, on: Judging, mayBeUnknown: ReadonlySet<VerdictKind>): boolean {
  const questions = questionsOf(scene);
  const isFine = (one: (typeof questions)[number]) => clearsAsDrawn(one, on) ?? mayBeUnknown.has(one.kind);
  if (!questions.every(isFine)) return false;
  return questions.every((question) => {
    const verdict = judge(question, on);
    return verdict === undefined || verdict.state === 'clears' || verdict.state === 'unknown';
  });
}

/** Ways of holding on the same machine that need nothing more to be said. */
function otherHoldings(scene: Scene): readonly Holding[] {
  const { setup, type } = scene;
  const as: HoldingWay = setup.holding.as;
  if (type !== 'lathe') return [];
  const ways: Holding[] = [];
  const isTurned = as !== 'vise' && as !== 'clamped to the table';
  if (isTurned && as !== 'between centres') ways.push({ as: 'between centres' });
  if (isTurned && as !== 'face plate') {
    const seat = stationAtHead(scene);
    if (seat) ways.push({ as: 'face plate', seat: { station: seat, beyond: '' }, tailCentre: false });
  }
  return ways;
}

/** A station at the head end of the work, that could lie on the face plate. */
function stationAtHead(scene: Scene) {
  const { worlds, setup } = scene;
  const { sense } = latheStand(scene);
  const head = endOf(worlds.drawn, workPieces(scene).bodies, sense, 'head');
  const { numbers, recipes } = worlds.work;
  for (const { piece } of recipes) {
    if (piece.is !== 'body' || piece.part !== setup.part) continue;
    const body = numbers.record(piece.body);
    if (body?.kind !== 'body') continue;
    for (const { station } of usesOf(body).stations) {
      const place = numbers.place(station);
      const record = numbers.record(station);
      if (record?.kind !== 'station' || record.axis !== setup.line.axis || !place) continue;
      if (Math.abs(place.at - head) < 1e-6) return station;
    }
  }
  return undefined;
}

/** The first state of the part, in the order of its route, in which the set-up clears. */
function laterState(input: SetupInput, clears: (state: Setup['state']) => boolean): Remedy | undefined {
  const { setup, partOf } = input;
  const { state } = setup;
  if (state.is === 'finished') return undefined;
  const route = partOf(setup.part)?.operations ?? [];
  const from = state.is === 'after' ? route.findIndex(({ id }) => id === state.operation) + 1 : 0;
  let stock = stockIn(input, state);
  for (const operation of route.slice(from)) {
    // What is done in this very set-up cannot come before it.
    if (operation.setup === setup.id || operation.makes.length === 0) continue;
    const after = { is: 'after', operation: operation.id } as const;
    // What is taken away is left out of account: only where stock is gone may it clear.
    const left = stockIn(input, after);
    if (left === stock) continue;
    stock = left;
    if (clears(after)) return after;
  }
  return undefined;
}

/** On which bodies of the part there is stock in a state. */
function stockIn({ setup, partOf, numbers }: SetupInput, state: Setup['state']): string {
  const part = partOf(setup.part);
  return part ? [...bodiesOf(part, state, numbers).withStock].join(' ') : '';
}
