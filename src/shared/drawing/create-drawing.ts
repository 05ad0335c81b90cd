import { assert } from '../base/assert.ts';
import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Build } from '../build/records.ts';
import { defaultSettings, SETTINGS_ID } from '../build/settings.ts';
import { findConflicts } from './conflicts.ts';
import { distanceBetween } from './distance.ts';
import type { AxisDrawing, Drawing, DrawingChange, ResolvedDimension } from './drawing.ts';
import { evaluate } from './evaluate.ts';
import { keepAxis, sameContent } from './keep.ts';
import { settleLimits } from './limits.ts';
import { closesEasily, placeStations, sortAxis } from './place.ts';
import { hangsOn, touches } from './reach.ts';
import { newReading, readDimension, readLimits, tieDimension, untieDimension } from './read-dimension.ts';
import { rowOf } from './rows.ts';
import { showAxis } from './show-axis.ts';
import { showDimension } from './show-dimension.ts';
import { type AxisState, EVALUATE, emptyState, LIMIT, type PartState, READ, type State } from './state.ts';
import { listAxes, takeRecord } from './take-records.ts';
import { noWork, toEvaluate, toLimit, toLink, toPlaceEdge, toShowAgain, type Work } from './work.ts';

const NONE: readonly never[] = [];

/** The drawing graph of a build. See `Drawing` for its promises. */
export function createDrawing(build: Build): Drawing {
  const settings = build.get(SETTINGS_ID);
  let dimensionCount = 0;
  let stationCount = 0;
  for (const { kind } of build.values()) {
    if (kind === 'dimension') dimensionCount++;
    else if (kind === 'station') stationCount++;
  }
  const known = settings?.kind === 'settings' ? settings : defaultSettings('unnamed');
  const state = emptyState(known, dimensionCount, stationCount);
  fill(state, build);

  return {
    update: (diff) => update(state, diff),
    dimension: (id) => dimension(state, id),
    axesOf: (part) => axesOf(state, part),
    distance: (from, to) => distance(state, from, to),
    namedBy: (id) => namedBy(state, id),
    rings: () => rings(state),
    touches: (id) => touches(state, slotOf(state, id)),
    hangsOn: (id) => hangsOn(state, id),
  };
}

/** Takes a whole build into an empty state and works everything out. */
function fill(state: State, build: Build): void {
  const work = noWork();
  state.isFilling = true;
  state.reading = newReading();
  for (const record of build.values()) takeRecord(state, work, record, false);
  listAxes(state);
  const { count, todo } = state.dimensions;
  const all = new Array<number>(count);
  for (let slot = 0; slot < count; slot++) all[slot] = slot;
  todo.fill(READ | EVALUATE | LIMIT, 0, count);
  settle(state, { ...work, read: all, evaluate: all, limit: all });
  state.isFilling = false;
  state.reading = undefined;
}

function update(state: State, { removed, updated, added }: BuildDiff): DrawingChange {
  const work = noWork();
  for (const record of removed) takeRecord(state, work, record, true);
  for (const [, record] of updated) takeRecord(state, work, record, false);
  for (const record of added) takeRecord(state, work, record, false);
  settle(state, work);
  const dimensions: DimensionId[] = [];
  for (const slot of work.again) if (showAgain(state, slot)) dimensions.push(state.dimensions.ids[slot]!);
  return { dimensions, axes: work.axes.map(({ part, axis }) => ({ part: part.id, axis })) };
}

// Each of these loops has a function of its own, and so do those of the search: a compiler that comes in while a loop of a
// long function runs has yet to see the rest of it, and would have to begin again at the next loop, and the next.

/** Works out all that has been noted, in the order in which one follows from the other. */
function settle(state: State, work: Work): void {
  readAll(state, work);
  linkAll(state, work);
  const touched: number[] = [];
  evaluate(state, work.evaluate, touched);
  limitAll(state, work);
  followAll(state, work, touched);
  for (const axis of work.axes) layOut(state, axis);
  forget(state, work.read);
  forget(state, work.link);
  forget(state, work.evaluate);
  forget(state, work.limit);
  forget(state, work.again);
}

function readAll(state: State, work: Work): void {
  for (const slot of work.read) if (state.dimensions.records[slot] !== undefined) readOne(state, work, slot);
}

function readOne(state: State, work: Work, slot: number): void {
  const d = state.dimensions;
  const kind = d.kinds[slot];
  const unit = d.units[slot];
  untieDimension(state, slot);
  readDimension(state, slot);
  if (d.formulas[slot]) toLink(state, work, slot);
  if (d.kinds[slot] !== kind && d.dependents.count[slot]! > 0) {
    for (const dependent of rowOf(d.dependents, slot)) toLink(state, work, dependent);
  }
  if (d.units[slot] !== unit) toLimit(state, work, slot);
  toEvaluate(state, work, slot);
  toShowAgain(state, work, slot);
}

function linkAll(state: State, work: Work): void {
  const { records, formulas } = state.dimensions;
  for (const slot of work.link) {
    if (records[slot] === undefined || !formulas[slot]) continue;
    untieDimension(state, slot);
    tieDimension(state, slot);
    toEvaluate(state, work, slot);
    toShowAgain(state, work, slot);
  }
}

function limitAll(state: State, work: Work): void {
  for (const slot of work.limit) {
    if (state.dimensions.records[slot] === undefined) continue;
    readLimits(state, slot);
    toShowAgain(state, work, slot);
    if (settleLimits(state, slot)) toPlaceEdge(state, work, slot);
  }
}

function followAll(state: State, work: Work, touched: readonly number[]): void {
  const { records, todo } = state.dimensions;
  for (const slot of touched) {
    if (records[slot] === undefined) continue;
    // What had its limits read anew has them settled already.
    if ((todo[slot]! & LIMIT) === 0) settleLimits(state, slot);
    toShowAgain(state, work, slot);
    toPlaceEdge(state, work, slot);
  }
}

function forget(state: State, slots: readonly number[]): void {
  const { todo } = state.dimensions;
  for (const slot of slots) todo[slot] = 0;
}

/** Places an axis and looks for its contradictions. */
function layOut(state: State, axis: AxisState): void {
  axis.dirty = false;
  axis.before ??= axis.shown;
  axis.shown = undefined;
  sortAxis(state, axis);
  placeStations(state, axis, undefined);
  axis.banned = undefined;
  axis.conflicts = NONE;
  if (closesEasily(state, axis)) return;
  const { conflicts, banned } = findConflicts(state, axis);
  axis.conflicts = conflicts;
  axis.banned = banned;
  if (banned) placeStations(state, axis, banned);
}

function slotOf(state: State, id: DimensionId): number {
  const slot = state.dimensions.slots.get(id);
  assert(slot !== undefined && state.dimensions.records[slot], `the dimension asked for is in the build (${id})`);
  return slot;
}

/** Brings a dimension that was handed out up to date. @returns whether it differs (true when nobody has seen it yet). */
function showAgain(state: State, slot: number): boolean {
  const { shown, records } = state.dimensions;
  const old = shown[slot];
  if (records[slot] === undefined) {
    shown[slot] = undefined;
    return true;
  }
  if (!old) return true;
  const fresh = showDimension(state, slot);
  if (sameContent(old, fresh)) return false;
  shown[slot] = fresh;
  return true;
}

function dimension(state: State, id: DimensionId): ResolvedDimension {
  const slot = slotOf(state, id);
  const { shown } = state.dimensions;
  shown[slot] ??= showDimension(state, slot);
  return shown[slot]!;
}

function axesOf(state: State, id: PartId): readonly AxisDrawing[] {
  const part = state.parts.get(id);
  if (!part) return NONE;
  const old = part.shownAxes;
  const current = part.axes.filter((axis) => axis !== undefined && axis.stations.length > 0) as AxisState[];
  if (old && old.length === current.length && current.every((axis, i) => axis.shown === old[i])) return old;
  return handOut(state, part, current);
}

function handOut(state: State, part: PartState, current: readonly AxisState[]): readonly AxisDrawing[] {
  const fresh = current.map((axis) => {
    if (!axis.shown) {
      const made = showAxis(state, axis);
      axis.shown = axis.before ? keepAxis(axis.before, made) : made;
      axis.before = undefined;
    }
    return axis.shown;
  });
  const old = part.shownAxes;
  part.shownAxes = old && old.length === fresh.length && fresh.every((axis, i) => axis === old[i]) ? old : fresh;
  return part.shownAxes;
}

function distance(state: State, from: StationId, to: StationId) {
  const { slots, axes } = state.stations;
  const a = slots.get(from);
  const b = slots.get(to);
  assert(a !== undefined && axes[a], `the station asked for is in the build (${from})`);
  assert(b !== undefined && axes[b], `the station asked for is in the build (${to})`);
  return axes[a] === axes[b] ? distanceBetween(state, axes[a], a, b) : undefined;
}

function namedBy(state: State, id: DimensionId): readonly DimensionId[] {
  const { dependents, ids } = state.dimensions;
  return Array.from(rowOf(dependents, slotOf(state, id)), (slot) => ids[slot]!).sort();
}

function rings(state: State): readonly (readonly DimensionId[])[] {
  if (state.shownRings) return state.shownRings;
  const found = new Set<readonly DimensionId[]>();
  for (const slot of state.ringed) found.add(state.dimensions.rings.get(slot)!);
  state.shownRings = [...found].sort((a, b) => (a[0]! < b[0]! ? -1 : 1));
  return state.shownRings;
}
