import type { DimensionId } from '../base/ids.ts';
import { problemAt, runProgram } from '../formula/run.ts';
import { holds, rowOf } from './rows.ts';
import { EMPTY, EVALUATE, RING, type State, type Status, TEXT, VALUED, WAITING } from './state.ts';

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
 * @param touched receives the slots of the dimensions whose status, value or problem may differ from before; nothing
 * while a whole build is taken in, when all of them do.
 */
export function evaluate(state: State, seeds: readonly number[], touched: number[]): void {
  const { todo, left } = state.dimensions;
  const { leftCount, rings } = search(state, seeds);
  for (const ring of rings) enterRing(state, ring, touched);
  const inRing = state.ringed;
  for (let i = leftCount - 1; i >= 0; i--) {
    const slot = left[i]!;
    if ((todo[slot]! & EVALUATE) === 0) continue;
    todo[slot]! &= ~EVALUATE;
    if (inRing.size > 0 && inRing.has(slot)) continue;
    if (state.isFilling) state.dimensions.status[slot] = settle(state, slot);
    else settleAgain(state, slot, touched);
  }
}

function settleAgain(state: State, slot: number, touched: number[]): void {
  const d = state.dimensions;
  const before = d.status[slot];
  const old = d.value[slot]!;
  const oldProblem = d.runProblems.get(slot);
  const now = settle(state, slot);
  d.status[slot] = now;
  const differs =
    now !== before ||
    (now === VALUED ? d.value[slot] !== old : now === WAITING || d.runProblems.get(slot) !== oldProblem);
  if (!differs) return;
  touched.push(slot);
  passOn(state, slot);
}

function passOn(state: State, slot: number): void {
  const { dependents, programs, todo } = state.dimensions;
  const { pool } = dependents;
  const start = dependents.start[slot]!;
  const end = start + dependents.count[slot]!;
  for (let i = start; i < end; i++) {
    const dependent = pool[i]!;
    if (programs[dependent] !== undefined) todo[dependent]! |= EVALUATE;
  }
}

/** Works out one dimension whose operands are settled. */
function settle(state: State, slot: number): Status {
  const d = state.dimensions;
  if (d.runProblems.size > 0) d.runProblems.delete(slot);
  const program = d.programs[slot];
  if (program) {
    const { pool, start, count } = d.operands;
    const first = start[slot]!;
    const values = operandsOf(count[slot]!);
    for (let i = 0; i < values.length; i++) {
      const operand = pool[first + i]!;
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
    d.runProblems.set(slot, problemAt(program, values) ?? { code: 'overflow', start: 0, end: 0 });
    return TEXT;
  }
  d.value[slot] = d.written[slot]!;
  if (d.textProblems.size > 0 && d.textProblems.has(slot)) return TEXT;
  return Number.isNaN(d.value[slot]) ? EMPTY : VALUED;
}

interface Search {
  /** Scratch numbers up to here are from earlier walks: not visited. */
  readonly base: number;
  counter: number;
  leftCount: number;
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
  const found: Search = { base, counter: base, leftCount: 0, rings: [], open: [], path: [], next: [] };
  for (const seed of seeds) {
    if (index[seed]! > base) continue;
    if (dependents.count[seed]! > 0) {
      searchFrom(state, found, seed);
    } else {
      leaveRing(state, seed);
      index[seed] = ++found.counter;
      low[seed] = DONE;
      state.dimensions.left[found.leftCount++] = seed;
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
    const at = next[top]!;
    if (at >= dependents.count[slot]!) {
      leave(state, found, slot);
      continue;
    }
    next[top] = at + 1;
    const dependent = dependents.pool[dependents.start[slot]! + at]!;
    // A formula that cannot be read or whose units do not fit hangs on nothing: it is a root of what waits for it.
    if (programs[dependent] === undefined) continue;
    if (index[dependent]! <= base) enter(state, found, dependent);
    else if (low[dependent] !== DONE && index[dependent]! < low[slot]!) low[slot] = index[dependent]!;
  }
}

/** Goes back from a slot; if nothing reaches round behind it, all that is open since then is settled, as a ring or alone. */
function leave(state: State, found: Search, slot: number): void {
  const { index, low, dependents, programs, left } = state.dimensions;
  const { rings, open, path, next } = found;
  path.pop();
  next.pop();
  const lowest = low[slot]!;
  if (lowest === index[slot]) {
    if (open[open.length - 1] === slot) {
      if (programs[slot] !== undefined && holds(dependents, slot, slot)) rings.push([slot]);
      open.pop();
      low[slot] = DONE;
      left[found.leftCount++] = slot;
    } else {
      const from = open.lastIndexOf(slot);
      rings.push(open.slice(from));
      while (open.length > from) {
        const member = open.pop()!;
        low[member] = DONE;
        left[found.leftCount++] = member;
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
    d.runProblems.delete(slot);
    d.rings.set(slot, ring);
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
    const named = rowOf(operands, slot);
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
    for (const operand of rowOf(operands, stack.pop()!)) {
      if (operand < 0 || seen.has(operand) || status[operand] === VALUED) continue;
      seen.add(operand);
      if (status[operand] === WAITING) stack.push(operand);
      else causes.push(ids[operand]!);
    }
  }
  return causes.sort();
}
