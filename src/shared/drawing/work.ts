import { type AxisState, EVALUATE, LIMIT, LINK, READ, SHOWN_AGAIN, type State } from './state.ts';

/** What one update has found to do; each slot and axis stands in a list once. */
export interface Work {
  readonly read: number[];
  readonly link: number[];
  readonly evaluate: number[];
  readonly limit: number[];
  readonly again: number[];
  readonly axes: AxisState[];
}

export const noWork = (): Work => ({ read: [], link: [], evaluate: [], limit: [], again: [], axes: [] });

function add(state: State, list: number[], bit: number, slot: number): void {
  const { todo } = state.dimensions;
  if ((todo[slot]! & bit) !== 0) return;
  todo[slot]! |= bit;
  list.push(slot);
}

export const toRead = (state: State, work: Work, slot: number): void => add(state, work.read, READ, slot);
export const toLink = (state: State, work: Work, slot: number): void => add(state, work.link, LINK, slot);
export const toEvaluate = (state: State, work: Work, slot: number): void => add(state, work.evaluate, EVALUATE, slot);
export const toLimit = (state: State, work: Work, slot: number): void => add(state, work.limit, LIMIT, slot);
export function toShowAgain(state: State, work: Work, slot: number): void {
  // While a build is taken in, nobody has seen anything yet.
  if (!state.isFilling) add(state, work.again, SHOWN_AGAIN, slot);
}

export function toPlace(work: Work, axis: AxisState): void {
  if (axis.dirty) return;
  axis.dirty = true;
  work.axes.push(axis);
}

/** Marks the axis that a dimension is an edge of, if it is one. */
export function toPlaceEdge(state: State, work: Work, slot: number): void {
  const axis = state.dimensions.axis[slot]!;
  if (axis >= 0) toPlace(work, state.axes[axis]!);
}
