import type { OperationId, SetupId } from '../../base/ids.ts';
import type { OrderConstraint } from './order-constraints.ts';

/** An operation as an order sees it. */
export interface Ordered {
  readonly id: OperationId;
  /** At the bench when there is none. */
  readonly setup?: SetupId | undefined;
}

export type OrderProposal =
  | {
      readonly is: 'order';
      readonly order: readonly OperationId[];
      /** How often the work is taken up into a machine. */
      readonly holdings: number;
      /** Whether no order at all needs fewer; with very many operations only a good one is looked for. */
      readonly fewest: boolean;
      /** Wishes of good practice that no order can have together with all else. */
      readonly dropped: readonly OrderConstraint[];
    }
  /** There is no order: each has to come before the next, and the last before the first. */
  | { readonly is: 'ring'; readonly ring: readonly OrderConstraint[] };

/** How often the work is taken up into a machine when it is worked in this order. The bench holds nothing. */
export function holdingsOf(order: readonly Ordered[]): number {
  let holdings = 0;
  order.forEach(({ setup }, i) => {
    if (setup !== undefined && (i === 0 || order[i - 1]!.setup !== setup)) holdings++;
  });
  return holdings;
}

/**
 * A shortest ring of constraints, or undefined where there is an order. Of several the one through the operation that comes
 * first in the list.
 */
export function findRing(
  list: readonly OperationId[],
  constraints: readonly OrderConstraint[],
): readonly OrderConstraint[] | undefined {
  const out = new Map<OperationId, OrderConstraint[]>();
  for (const constraint of constraints) {
    const edges = out.get(constraint.first);
    if (edges) edges.push(constraint);
    else out.set(constraint.first, [constraint]);
  }
  let best: readonly OrderConstraint[] | undefined;
  for (const start of list) {
    const way = shortestWayBack(start, out);
    if (way && (!best || way.length < best.length)) best = way;
  }
  return best;
}

function shortestWayBack(
  start: OperationId,
  out: ReadonlyMap<OperationId, readonly OrderConstraint[]>,
): readonly OrderConstraint[] | undefined {
  const cameBy = new Map<OperationId, OrderConstraint>();
  const queue = [start];
  for (const at of queue) {
    for (const constraint of out.get(at) ?? []) {
      const { next } = constraint;
      if (next === start) {
        const way = [constraint];
        for (let from = constraint.first; from !== start; from = cameBy.get(from)!.first)
          way.unshift(cameBy.get(from)!);
        return way;
      }
      if (cameBy.has(next)) continue;
      cameBy.set(next, constraint);
      queue.push(next);
    }
  }
  return undefined;
}

/** Orders looked at side by side; with fewer than this the answer is the very best. */
const MOST_STATES = 400;

/** How far one way of working has come. */
interface State {
  /** Bit i: operation i of the list is done. */
  readonly done: bigint;
  readonly order: readonly number[];
}

/**
 * An order that has all that is needed, and of those one that takes the work up into a machine the fewest times; equal ones
 * stay as near to the list as can be. In one holding everything is done that can be: put off, it could only cost.
 */
export function proposeOrder(list: readonly Ordered[], constraints: readonly OrderConstraint[]): OrderProposal {
  const ids = list.map(({ id }) => id);
  const needed = constraints.filter(({ soft }) => !soft);
  const ring = findRing(ids, needed);
  if (ring) return { is: 'ring', ring };
  const { before, dropped } = withWishes(ids, needed, constraints);
  const groups = groupsOf(list);
  const atBench = groups.find(({ setup }) => setup === undefined);
  const all = (1n << BigInt(list.length)) - 1n;
  let frontier: readonly State[] = [{ done: 0n, order: [] }];
  let fewest = true;
  const seen = new Set<bigint>([0n]);
  while (true) {
    const reached = benchFirst(frontier, atBench, before, seen);
    const end = reached.find(({ done }) => done === all);
    if (end) return finish(list, end.order, constraints, fewest, dropped);
    const next: State[] = [];
    for (const state of reached) {
      for (const group of groups) {
        if (group === atBench) continue;
        const further = workOn(state, group, before);
        if (further.done === state.done || seen.has(further.done)) continue;
        seen.add(further.done);
        next.push(further);
      }
    }
    if (next.length > MOST_STATES) {
      fewest = false;
      next.sort((a, b) => b.order.length - a.order.length);
      // What is let go here may be come upon again from elsewhere.
      for (const { done } of next.splice(MOST_STATES)) seen.delete(done);
    }
    frontier = next;
  }
}

/** The operations of one set-up, or of the bench, by their places in the list. */
interface Group {
  readonly setup: SetupId | undefined;
  readonly members: readonly number[];
}

function groupsOf(list: readonly Ordered[]): readonly Group[] {
  const groups = new Map<SetupId | undefined, number[]>();
  list.forEach(({ setup }, i) => {
    const members = groups.get(setup);
    if (members) members.push(i);
    else groups.set(setup, [i]);
  });
  return [...groups].map(([setup, members]) => ({ setup, members }));
}

/** Who has to be done before each operation, wishes added as far as they make no ring. */
function withWishes(
  ids: readonly OperationId[],
  needed: readonly OrderConstraint[],
  constraints: readonly OrderConstraint[],
): { readonly before: readonly bigint[]; readonly dropped: readonly OrderConstraint[] } {
  const kept = [...needed];
  const dropped: OrderConstraint[] = [];
  for (const wish of constraints) {
    if (!wish.soft) continue;
    if (findRing([wish.first], [...kept, wish])) dropped.push(wish);
    else kept.push(wish);
  }
  const place = new Map(ids.map((id, i) => [id, i]));
  const before = ids.map(() => 0n);
  for (const { first, next } of kept) {
    const [i, j] = [place.get(first), place.get(next)];
    if (i !== undefined && j !== undefined) before[j] = before[j]! | (1n << BigInt(i));
  }
  return { before, dropped };
}

/** Work at the bench costs no holding: besides each state also the one in which it is done. */
function benchFirst(
  states: readonly State[],
  bench: Group | undefined,
  before: readonly bigint[],
  seen: Set<bigint>,
): readonly State[] {
  if (!bench) return states;
  const reached = [...states];
  for (const state of states) {
    const further = workOn(state, bench, before);
    if (further.done === state.done || seen.has(further.done)) continue;
    seen.add(further.done);
    reached.push(further);
  }
  return reached;
}

/** Does all of one holding that can be done, in list order as far as that goes. */
function workOn({ done: start, order: earlier }: State, { members }: Group, before: readonly bigint[]): State {
  let done = start;
  const order = [...earlier];
  let waiting = members.filter((i) => (start & (1n << BigInt(i))) === 0n);
  for (let next = waiting.find((i) => (before[i]! & ~done) === 0n); next !== undefined; ) {
    const one = next;
    done |= 1n << BigInt(one);
    order.push(one);
    // What waited for this one may stand before it in the list.
    waiting = waiting.filter((i) => i !== one);
    next = waiting.find((i) => (before[i]! & ~done) === 0n);
  }
  return { done, order };
}

function finish(
  list: readonly Ordered[],
  found: readonly number[],
  constraints: readonly OrderConstraint[],
  fewest: boolean,
  dropped: readonly OrderConstraint[],
): OrderProposal {
  const order = found.map((i) => list[i]!);
  const holdings = holdingsOf(order);
  const place = new Map(list.map(({ id }, i) => [id, i]));
  const isGood = constraints.every((one) => dropped.includes(one) || place.get(one.first)! < place.get(one.next)!);
  // As the list stands it is an order already: it stays where no other needs fewer holdings.
  const stays = isGood && holdingsOf(list) <= holdings;
  const chosen = stays ? list : order;
  return { is: 'order', order: chosen.map(({ id }) => id), holdings: holdingsOf(chosen), fewest, dropped };
}
