import { unreachable } from '../base/assert.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Part } from '../build/part.ts';
import type { BuildRecord } from '../build/records.ts';
import type { Settings } from '../build/settings.ts';
import type { Station } from '../build/station.ts';
import { addBearer, dropBearer } from './name-table.ts';
import { dimensionNameEntry, partNameEntry } from './names.ts';
import { untieDimension } from './read-dimension.ts';
import { addTo, rowOf, takeFrom } from './rows.ts';
import { axisState, dimensionSlot, type PartState, partState, type State, stationSlot } from './state.ts';
import { toEvaluate, toLimit, toLink, toPlace, toPlaceEdge, toRead, toShowAgain, type Work } from './work.ts';

// Takes records into the graph's memory and notes what must be worked out again. Records may come in any order: a
// dimension may speak of a station, and a station of a part, that comes later in the same change.

export function takeRecord(state: State, work: Work, record: BuildRecord, removed: boolean): void {
  switch (record.kind) {
    case 'dimension':
      takeDimension(state, work, record, removed);
      break;
    case 'station':
      takeStation(state, work, record, removed);
      break;
    case 'part':
      takePart(state, work, record, removed);
      break;
    case 'settings':
      if (!removed) takeSettings(state, work, record);
      break;
    case 'acceptance':
    case 'material':
    case 'alloy':
    case 'machine':
    case 'solid':
    case 'body':
    case 'setup':
    case 'operation':
    case 'casting':
    case 'pattern':
    case 'pour':
      break;
    default:
      unreachable(record);
  }
}

function takeSettings(state: State, work: Work, to: Settings): void {
  const from = state.settings;
  state.settings = to;
  const rereads = from.lengthUnit !== to.lengthUnit;
  const relimits = from.machinedTolerance !== to.machinedTolerance || from.castingGrade !== to.castingGrade;
  if (!rereads && !relimits) return;
  const { count, records } = state.dimensions;
  for (let slot = 0; slot < count; slot++) {
    if (records[slot] === undefined) continue;
    if (rereads) toRead(state, work, slot);
    if (relimits) toLimit(state, work, slot);
  }
}

function takePart(state: State, work: Work, record: Part, removed: boolean): void {
  const part = partState(state, record.id);
  const from = part.record;
  part.record = removed ? undefined : record;
  if (!removed && from?.name === record.name) return;
  state.sortedPartNames = undefined;
  for (const slot of state.unknownParts) toLink(state, work, slot);
  state.unknownParts.clear();
  if (from) {
    const entry = partNameEntry(state, from.name);
    dropBearer(state.names, entry, part.slot);
    tellMentions(state, work, entry);
  }
  if (removed) return;
  const entry = partNameEntry(state, record.name);
  addBearer(state.names, entry, part.slot);
  tellMentions(state, work, entry);
}

function tellMentions(state: State, work: Work, entry: number): void {
  const { mentions } = state.names;
  if (mentions.count[entry]! > 0) for (const slot of rowOf(mentions, entry)) toLink(state, work, slot);
}

function nameTaken(state: State, work: Work, part: PartState, name: string, slot: number, isGiven: boolean): void {
  const entry = dimensionNameEntry(state, part, name);
  if (isGiven) addBearer(state.names, entry, slot);
  else dropBearer(state.names, entry, slot);
  tellMentions(state, work, entry);
  part.sortedNames = undefined;
  if (!part.unknowns || part.unknowns.size === 0) return;
  for (const unknown of part.unknowns) toLink(state, work, unknown);
  part.unknowns.clear();
}

function without(list: number[], slot: number): void {
  const at = list.lastIndexOf(slot);
  if (at >= 0) list.splice(at, 1);
}

function takeStation(state: State, work: Work, record: Station, removed: boolean): void {
  const s = state.stations;
  const slot = stationSlot(state, record.id);
  const from = s.records[slot];
  const oldAxis = s.axes[slot];
  const newAxis = removed ? undefined : axisState(state, partState(state, record.part), record.axis);
  s.records[slot] = removed ? undefined : record;
  s.axes[slot] = newAxis;
  if (oldAxis !== newAxis) {
    if (oldAxis) {
      without(oldAxis.stations, slot);
      toPlace(work, oldAxis);
    }
    if (newAxis) {
      if (!state.isFilling) newAxis.stations.push(slot);
      newAxis.sorted = false;
      toPlace(work, newAxis);
    }
    if (s.edges.count[slot]! > 0) for (const edge of rowOf(s.edges, slot)) giveAxis(state, work, edge);
  } else if (newAxis && from) {
    if (from.order !== record.order) newAxis.sorted = false;
    if (from.order !== record.order || from.datum !== record.datum || from.form !== record.form) toPlace(work, newAxis);
  }
}

/**
 * Gives every axis its stations and dimensions, once a whole build is taken in: counted first, so that the lists are made
 * to measure.
 */
export function listAxes({ stations, dimensions, axes }: State): void {
  const stationCounts = new Int32Array(axes.length);
  const edgeCounts = new Int32Array(axes.length);
  for (let slot = 0; slot < stations.count; slot++) {
    const axis = stations.axes[slot];
    if (axis) stationCounts[axis.slot]!++;
  }
  for (let slot = 0; slot < dimensions.count; slot++) {
    const axis = dimensions.axis[slot]!;
    if (axis >= 0) edgeCounts[axis]!++;
  }
  for (const axis of axes) {
    axis.stations = new Array<number>(stationCounts[axis.slot]!);
    axis.edges = new Array<number>(edgeCounts[axis.slot]!);
  }
  stationCounts.fill(0);
  edgeCounts.fill(0);
  for (let slot = 0; slot < stations.count; slot++) {
    const axis = stations.axes[slot];
    if (axis) axis.stations[stationCounts[axis.slot]!++] = slot;
  }
  for (let slot = 0; slot < dimensions.count; slot++) {
    const axis = dimensions.axis[slot]!;
    if (axis >= 0) axes[axis]!.edges[edgeCounts[axis]!++] = slot;
  }
}

/** Finds the axis that a dimension is an edge of: both stations must be there, on one axis, of the dimension's own part. */
function giveAxis(state: State, work: Work, slot: number): void {
  const d = state.dimensions;
  const { axes } = state.stations;
  const from = d.from[slot]!;
  const to = d.to[slot]!;
  const axis = from >= 0 && to >= 0 ? axes[from] : undefined;
  const fits = axis !== undefined && axis === axes[to] && axis.part === d.parts[slot];
  const now = fits ? axis.slot : -1;
  const before = d.axis[slot]!;
  if (now === before) return;
  if (before >= 0) {
    const old = state.axes[before]!;
    without(old.edges, slot);
    toPlace(work, old);
  }
  d.axis[slot] = now;
  if (!fits) return;
  if (!state.isFilling) axis.edges.push(slot);
  axis.sorted = false;
  toPlace(work, axis);
}

/** Sets the stations that a dimension measures between; -1 for none. */
function giveEnds(state: State, work: Work, slot: number, from: number, to: number): void {
  const d = state.dimensions;
  const s = state.stations;
  const oldFrom = d.from[slot]!;
  const oldTo = d.to[slot]!;
  if (oldFrom !== from || oldTo !== to) {
    if (oldFrom >= 0) takeFrom(s.edges, oldFrom, slot);
    if (oldTo >= 0 && oldTo !== oldFrom) takeFrom(s.edges, oldTo, slot);
    d.from[slot] = from;
    d.to[slot] = to;
    if (from >= 0) {
      addTo(s.edges, from, slot);
      s.edgesSorted[from] = 0;
    }
    if (to >= 0 && to !== from) {
      addTo(s.edges, to, slot);
      s.edgesSorted[to] = 0;
    }
    // The same axis may now hold it between other stations.
    toPlaceEdge(state, work, slot);
  }
  giveAxis(state, work, slot);
}

function takeDimension(state: State, work: Work, record: Dimension, removed: boolean): void {
  const d = state.dimensions;
  const part = partState(state, record.part);
  const slot = dimensionSlot(state, record.id, part);
  const from = d.records[slot];
  if (removed) {
    if (from) dropDimension(state, work, slot, from);
    return;
  }
  d.records[slot] = record;
  const oldPart = d.parts[slot]!;
  d.parts[slot] = part;
  if (!from || from.name !== record.name || oldPart !== part) {
    if (from) nameTaken(state, work, oldPart, from.name, slot, false);
    nameTaken(state, work, part, record.name, slot, true);
  }
  if (!from || from.measure !== record.measure || oldPart !== part) {
    const { measure } = record;
    const between = measure.type === 'between';
    const start = between ? stationSlot(state, measure.from) : -1;
    const end = between ? stationSlot(state, measure.to) : -1;
    giveEnds(state, work, slot, start, end);
  }
  // While a build is taken in, everything is to be done with every dimension.
  if (state.isFilling) return;
  if (!from) {
    toRead(state, work, slot);
    toLimit(state, work, slot);
    return;
  }
  if (from.value !== record.value || from.measure !== record.measure) toRead(state, work, slot);
  if (oldPart !== part) toLink(state, work, slot);
  if (from.limits !== record.limits || from.finish !== record.finish || from.measure !== record.measure) {
    toLimit(state, work, slot);
  }
  if (from.order !== record.order) {
    const { edgesSorted } = state.stations;
    if (d.from[slot]! >= 0) edgesSorted[d.from[slot]!] = 0;
    if (d.to[slot]! >= 0) edgesSorted[d.to[slot]!] = 0;
    if (d.axis[slot]! >= 0) state.axes[d.axis[slot]!]!.sorted = false;
  }
  // The order chooses the way of placing; the source and the text, what is suspected in a contradiction.
  if (from.order !== record.order || from.source !== record.source || from.value !== record.value) {
    toPlaceEdge(state, work, slot);
  }
}

function dropDimension(state: State, work: Work, slot: number, from: Dimension): void {
  const d = state.dimensions;
  untieDimension(state, slot);
  nameTaken(state, work, d.parts[slot]!, from.name, slot, false);
  giveEnds(state, work, slot, -1, -1);
  d.records[slot] = undefined;
  d.formulas[slot] = undefined;
  d.textProblems.delete(slot);
  d.limitsProblems.delete(slot);
  d.written[slot] = d.writtenMinus[slot] = d.writtenPlus[slot] = Number.NaN;
  toEvaluate(state, work, slot);
  toShowAgain(state, work, slot);
}
