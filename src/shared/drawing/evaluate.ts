import type { DimensionId } from '../base/ids.ts';
import { problemAt, runProgram } from '../formula/run.ts';
import { EMPTY, EVALUATE, RING, type State, type Status, TEXT, VALUED, WAITING } from './state.ts';

const NONE: readonly never[] = [];

// Scratch for operands; a formula of more names takes a longer one. Exact lengths, as programs may look at them.
const scratch: Float64Array[] = [];

function operandsOf(count: number): Float64Array {
  if (count > 64) return new Float64Array(count);
  scratch[count] ??= new Float64Array(count);
  return scratch[count]!;
}

/**
 * Gives every dimension marked EVALUATE, and all that hang on them, their values.
 *
 * One depth-first search (Tarjan 1972, SIAM J. Comput. 1, 146) from the marked ones along "is named by" finds at once the
 * rings (strongly connected components) and an order in which a dimension comes after all it names. Rings are found
 * anew among what is reached only: a ring that an edit makes or breaks is always reached from the edited dimension.
 *
 * @param touched receives the slots of the dimensions whose status, value or problem may differ from before.
 */
export function evaluate(state: State, seeds: readonly number[], touched: number[]): void {
  const d = state.dimensions;
  const { finished, rings } = search(state, seeds);
  for (const ring of rings) enterRing(state, ring, touched);
  const inRing = state.ringed;
  for (let i = finished.length - 1; i >= 0; i--) {
    const slot = finished[i]!;
    if (inRing.size > 0 && inRing.has(slot)) continue;
    if ((d.todo[slot]! & EVALUATE) === 0) continue;
    const before = d.status[slot];
    const old = d.value[slot]!;
    const oldProblem = d.runProblems[slot];
    const now = settle(state, slot);
    d.status[slot] = now;
    const differs =
      now !== before ||
      (now === VALUED ? d.value[slot] !== old : now === WAITING || d.runProblems[slot] !== oldProblem);
    if (!differs) continue;
    touched.push(slot);
    passOn(state, slot);
  }
  for (const slot of finished) d.todo[slot]! &= ~EVALUATE;
}

function passOn(state: State, slot: number): void {
  const { dependents, programs, todo } = state.dimensions;
  const list = dependents[slot];
  if (!list) return;
  for (const dependent of list) if (programs[dependent] !== undefined) todo[dependent]! |= EVALUATE;
}

/** Works out one dimension whose operands are settled. */
function settle(state: State, slot: number): Status {
  const d = state.dimensions;
  if (d.runProblems[slot]) d.runProblems[slot] = undefined;
  const program = d.programs[slot];
  if (program) {
    const operands = d.operands[slot]!;
    const values = operandsOf(operands.length);
    for (let i = 0; i < operands.length; i++) {
      const operand = operands[i]!;
      if (d.status[operand] !== VALUED) {
        d.value[slot] = Number.NaN;
        return WAITING;
      }
      values[i] = d.value[operand]!;
    }
    const value = runProgram(program, values);
    if (Number.isFinite(value)) {
      d.value[slot] = value + 0;
      return VALUED;
    }
    d.value[slot] = Number.NaN;
    d.runProblems[slot] = problemAt(program, values) ?? { code: 'overflow', start: 0, end: 0 };
    return TEXT;
  }
  d.value[slot] = d.written[slot]!;
  if (d.textProblems[slot]) return TEXT;
  return Number.isNaN(d.value[slot]) ? EMPTY : VALUED;
}

interface Search {
  /** Scratch numbers up to here are from earlier walks: not visited. */
  readonly base: number;
  counter: number;
  readonly finished: number[];
  readonly rings: number[][];
  /** Visited, and not yet known to be in a ring or out of it. */
  readonly open: number[];
  /** The way from the seed to here, and how many dependents of each were taken. */
  readonly path: number[];
  readonly next: number[];
}

// Stands for "left for good" among the scratch numbers.
const DONE = 0x7fff_ffff;

/** Finds what hangs on the seeds: slots in the order in which the search leaves them, and the rings among them. */
function search(state: State, seeds: readonly number[]): Search {
  const { index, low, dependents } = state.dimensions;
  // Every walk counts on from the last, so that the scratch columns need no clearing.
  if (state.walk > 0x3fff_ffff) {
    index.fill(0);
    state.walk = 0;
  }
  const base = state.walk;
  const found: Search = { base, counter: base, finished: [], rings: [], open: [], path: [], next: [] };
  for (const seed of seeds) {
    if (index[seed]! > base) continue;
    const list = dependents[seed];
    if (list && list.length > 0) {
      searchFrom(state, found, seed);
    } else {
      leaveRing(state, seed);
      index[seed] = ++found.counter;
      low[seed] = DONE;
      found.finished.push(seed);
    }
  }
  state.walk = found.counter;
  return found;
}

function enter(state: State, found: Search, slot: number): void {
  const { index, low } = state.dimensions;
  leaveRing(state, slot);
  index[slot] = low[slot] = ++found.counter;
  found.open.push(slot);
  found.path.push(slot);
  found.next.push(0);
}

function searchFrom(state: State, found: Search, seed: number): void {
  const { index, low, dependents, programs } = state.dimensions;
  const { base, path, next } = found;
  enter(state, found, seed);
  while (path.length > 0) {
    const top = path.length - 1;
    const slot = path[top]!;
    const hanging = dependents[slot];
    const at = next[top]!;
    if (!hanging || at >= hanging.length) {
      leave(state, found, slot);
      continue;
    }
    next[top] = at + 1;
    const dependent = hanging[at]!;
    // A formula that cannot be read or whose units do not fit hangs on nothing: it is a root of what waits for it.
    if (programs[dependent] === undefined) continue;
    if (index[dependent]! <= base) enter(state, found, dependent);
    else if (low[dependent] !== DONE && index[dependent]! < low[slot]!) low[slot] = index[dependent]!;
  }
}

/** Goes back from a slot; if nothing reaches round behind it, all that is open since then is settled, as a ring or alone. */
function leave(state: State, { finished, rings, open, path, next }: Search, slot: number): void {
  const { index, low, dependents, programs } = state.dimensions;
  path.pop();
  next.pop();
  const lowest = low[slot]!;
  if (lowest === index[slot]) {
    if (open[open.length - 1] === slot) {
      if (programs[slot] !== undefined && dependents[slot]?.includes(slot)) rings.push([slot]);
      open.pop();
      low[slot] = DONE;
      finished.push(slot);
    } else {
      const from = open.lastIndexOf(slot);
      rings.push(open.slice(from));
      while (open.length > from) {
        const member = open.pop()!;
        low[member] = DONE;
        finished.push(member);
      }
    }
  }
  const parent = path[path.length - 1];
  if (parent !== undefined && lowest < low[parent]!) low[parent] = lowest;
}

/** A ring's members are reached again whenever the ring may be broken: they are judged anew. */
function leaveRing(state: State, slot: number): void {
  if (state.dimensions.status[slot] !== RING) return;
  state.ringed.delete(slot);
  state.shownRings = undefined;
  state.dimensions.todo[slot]! |= EVALUATE;
}

function enterRing(state: State, members: readonly number[], touched: number[]): void {
  const d = state.dimensions;
  const ring = walkingOrder(state, members);
  for (const slot of members) {
    d.status[slot] = RING;
    d.value[slot] = Number.NaN;
    d.runProblems[slot] = undefined;
    d.rings[slot] = ring;
    state.ringed.add(slot);
    touched.push(slot);
    passOn(state, slot);
  }
  state.shownRings = undefined;
}

/**
 * A ring from its smallest id, along the names in its formulas. Where several rings hang together they are one: then the
 * order is that of a search which takes each formula's names as they come.
 */
function walkingOrder(state: State, members: readonly number[]): readonly DimensionId[] {
  const { ids, operands } = state.dimensions;
  const left = new Set(members);
  let first = members[0]!;
  for (const slot of members) if (ids[slot]! < ids[first]!) first = slot;
  const order: DimensionId[] = [];
  const stack = [first];
  while (stack.length > 0) {
    const slot = stack.pop()!;
    if (!left.delete(slot)) continue;
    order.push(ids[slot]!);
    const named = operands[slot] ?? NONE;
    for (let i = named.length - 1; i >= 0; i--) if (left.has(named[i]!)) stack.push(named[i]!);
  }
  return order;
}

/** Roots of a waiting dimension: the nearest dimensions along its formulas that lack a value of their own account. */
export function causesOf(state: State, slot: number): readonly DimensionId[] {
  const { ids, operands, status } = state.dimensions;
  const seen = new Set([slot]);
  const stack = [slot];
  const causes: DimensionId[] = [];
  while (stack.length > 0) {
    for (const operand of operands[stack.pop()!] ?? NONE) {
      if (operand < 0 || seen.has(operand) || status[operand] === VALUED) continue;
      seen.add(operand);
      if (status[operand] === WAITING) stack.push(operand);
      else causes.push(ids[operand]!);
    }
  }
  return causes.sort();
}
