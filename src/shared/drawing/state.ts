import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Part } from '../build/part.ts';
import type { Settings } from '../build/settings.ts';
import type { Station } from '../build/station.ts';
import type { Formula, Program } from '../formula/written.ts';
import type { Kind, LengthUnit, TextProblem } from '../quantity/kind.ts';
import type { Limits } from '../quantity/parse-limits.ts';
import type { TableTolerance } from '../tables/row.ts';
import type { AxisConflict } from './axis-conflict.ts';
import type { AxisDrawing, ResolvedDimension } from './drawing.ts';
import { createNameTable, type NameTable } from './name-table.ts';
import { createRows, type Rows, widenRows } from './rows.ts';
import { createSlotTable, type SlotTable } from './slot-table.ts';

// The graph's own memory. Every id is turned into a slot (a small integer) once and keeps it for good, so that a record
// that is taken away and put back (undo) finds its place. Numbers stand in typed columns, indexed by slot.

export const VALUED = 0;
export const EMPTY = 1;
export const TEXT = 2;
export const RING = 3;
export const WAITING = 4;
/** How it stands with a dimension's value. */
export type Status = typeof VALUED | typeof EMPTY | typeof TEXT | typeof RING | typeof WAITING;

// What an update still has to do with a dimension.
export const READ = 1;
export const LINK = 2;
export const EVALUATE = 4;
export const LIMIT = 8;
export const SHOWN_AGAIN = 16;

export interface PartState {
  readonly id: PartId;
  readonly slot: number;
  record: Part | undefined;
  /** Its newest entry in the table of names, or -1. */
  lastName: number;
  /** Names as written, sorted; made when a near name is looked for. */
  sortedNames: readonly string[] | undefined;
  /** Dimensions whose formulas name something that this part has not got. */
  unknowns: Set<number> | undefined;
  /** X, Y, Z; undefined while the axis never had a station. */
  readonly axes: (AxisState | undefined)[];
  shownAxes: readonly AxisDrawing[] | undefined;
}

export interface AxisState {
  readonly slot: number;
  readonly part: PartState;
  readonly axis: 'X' | 'Y' | 'Z';
  /** Station slots in list order (once `sorted`). */
  stations: number[];
  /** Slots of the dimensions between two stations of this axis, in list order (once `sorted`). */
  edges: number[];
  sorted: boolean;
  dirty: boolean;
  /** Station slots as the search from the origins reached them: a parent stands before its children. */
  sequence: readonly number[];
  /** Origin of each group. */
  origins: readonly number[];
  conflicts: readonly AxisConflict[];
  /** Dimensions that placing goes without, because each explains all contradictions of its block by itself. */
  banned: ReadonlySet<number> | undefined;
  shown: AxisDrawing | undefined;
  /** What was handed out before the last change: kept if the axis comes out the same. */
  before: AxisDrawing | undefined;
}

export interface DimensionColumns {
  count: number;
  readonly slots: SlotTable;
  readonly ids: (DimensionId | undefined)[];
  readonly records: (Dimension | undefined)[];
  readonly parts: (PartState | undefined)[];
  readonly kinds: (Kind | undefined)[];
  /** Nearest to a number in mm, degrees, kg, °C; NaN when there is none. */
  value: Float64Array;
  /** The number a plain quantity is written as; NaN for anything else. */
  written: Float64Array;
  /** Permitted deviation from the value; NaN when not known. */
  minus: Float64Array;
  plus: Float64Array;
  /** Deviations as written; NaN when none are. */
  writtenMinus: Float64Array;
  writtenPlus: Float64Array;
  status: Uint8Array;
  todo: Uint8Array;
  readonly formulas: (Formula | undefined)[];
  readonly programs: (Program | undefined)[];
  readonly units: (LengthUnit | undefined)[];
  /** What is wrong with the text or its names and units. */
  readonly textProblems: Map<number, TextProblem>;
  /** What went wrong when the formula was run. */
  readonly runProblems: Map<number, TextProblem>;
  readonly limitsProblems: Map<number, TextProblem>;
  /** The table row behind general limits. */
  readonly rows: (TableTolerance | undefined)[];
  readonly rings: Map<number, readonly DimensionId[]>;
  /** Slots of the dimensions a formula names, operand by operand; -1 where the name is not tied. */
  readonly operands: Rows;
  /** Slots of the dimensions whose formulas name it, each once. */
  readonly dependents: Rows;
  /** Names that its formula says. */
  readonly mentioned: Rows;
  /** Slot of the axis it is an edge of, or -1; the station slots it stands between, or -1. */
  axis: Int32Array;
  from: Int32Array;
  to: Int32Array;
  readonly shown: (ResolvedDimension | undefined)[];
  /** Scratch of the dirty walk; `left` holds slots in the order in which the walk leaves them. */
  index: Int32Array;
  low: Int32Array;
  left: Int32Array;
}

export interface StationColumns {
  count: number;
  readonly slots: SlotTable;
  readonly ids: (StationId | undefined)[];
  readonly records: (Station | undefined)[];
  readonly axes: (AxisState | undefined)[];
  /** Dimensions that measure from or to it, in list order once `edgesSorted`. */
  readonly edges: Rows;
  edgesSorted: Uint8Array;
  at: Float64Array;
  minus: Float64Array;
  plus: Float64Array;
  variance: Float64Array;
  shift: Float64Array;
  /** The dimension and the station it is placed by; -1 for an origin. */
  parentEdge: Int32Array;
  parent: Int32Array;
  depth: Int32Array;
  group: Int32Array;
  reached: Int32Array;
}

/** A formula's program, and the units of the cell and of the names that it was made for. */
export interface Linked {
  readonly program: Program;
  readonly want: Kind;
  readonly whole: boolean;
  readonly kinds: readonly Kind[];
}

/**
 * What was read while a whole build is taken in: the same formulas come again and again (a bore's depth, twice the wall),
 * and so do limits. They are read and made ready once.
 */
export interface Reading {
  readonly formulas: Map<string, Formula>;
  readonly linked: Map<Formula, Linked>;
  /** Limits of lengths by their text, for values written in each of the units. */
  readonly limits: Readonly<Record<LengthUnit, Map<string, Limits>>>;
}

export interface State {
  settings: Settings;
  readonly dimensions: DimensionColumns;
  readonly stations: StationColumns;
  readonly parts: Map<PartId, PartState>;
  readonly partList: PartState[];
  lastPart: PartState | undefined;
  readonly names: NameTable;
  /** The newest entry of a part's name, or -1. */
  lastPartName: number;
  sortedPartNames: readonly string[] | undefined;
  /** Dimensions whose formulas name a part that is not there. */
  readonly unknownParts: Set<number>;
  readonly axes: AxisState[];
  /** Slots of the dimensions that stand in a ring. */
  readonly ringed: Set<number>;
  shownRings: readonly (readonly DimensionId[])[] | undefined;
  /** Counts walks, so that scratch columns need no clearing. */
  walk: number;
  reach: number;
  /** A whole build is being taken in, each record once. */
  isFilling: boolean;
  /** What such a taking in has read already. */
  reading: Reading | undefined;
}

const SMALLEST = 64;
const NONE: readonly never[] = [];

/** Lists stand beside the typed columns and are as long as they: a list that grows slot by slot would be copied often. */
const list = <T>(capacity: number): (T | undefined)[] => new Array<T | undefined>(capacity).fill(undefined);

/**
 * A graph of nothing yet.
 * @param dimensionCount how many dimensions to make room for at once; more will fit, at the cost of moving.
 * @param stationCount the same for stations.
 */
export function emptyState(settings: Settings, dimensionCount = 0, stationCount = 0): State {
  const forDimensions = Math.max(SMALLEST, dimensionCount);
  const forStations = Math.max(SMALLEST, stationCount);
  const dimensionIds = list<DimensionId>(forDimensions);
  const stationIds = list<StationId>(forStations);
  return {
    settings,
    dimensions: {
      count: 0,
      slots: createSlotTable(dimensionIds, forDimensions),
      ids: dimensionIds,
      records: list(forDimensions),
      parts: list(forDimensions),
      kinds: list(forDimensions),
      value: new Float64Array(forDimensions),
      written: new Float64Array(forDimensions),
      minus: new Float64Array(forDimensions),
      plus: new Float64Array(forDimensions),
      writtenMinus: new Float64Array(forDimensions),
      writtenPlus: new Float64Array(forDimensions),
      status: new Uint8Array(forDimensions),
      todo: new Uint8Array(forDimensions),
      formulas: list(forDimensions),
      programs: list(forDimensions),
      units: list(forDimensions),
      textProblems: new Map(),
      runProblems: new Map(),
      limitsProblems: new Map(),
      rows: list(forDimensions),
      rings: new Map(),
      operands: createRows(forDimensions, forDimensions),
      dependents: createRows(forDimensions, forDimensions),
      mentioned: createRows(forDimensions, forDimensions),
      axis: new Int32Array(forDimensions),
      from: new Int32Array(forDimensions),
      to: new Int32Array(forDimensions),
      shown: list(forDimensions),
      index: new Int32Array(forDimensions),
      low: new Int32Array(forDimensions),
      left: new Int32Array(forDimensions),
    },
    stations: {
      count: 0,
      slots: createSlotTable(stationIds, forStations),
      ids: stationIds,
      records: list(forStations),
      axes: list(forStations),
      edges: createRows(forStations, 4 * forStations),
      edgesSorted: new Uint8Array(forStations),
      at: new Float64Array(forStations),
      minus: new Float64Array(forStations),
      plus: new Float64Array(forStations),
      variance: new Float64Array(forStations),
      shift: new Float64Array(forStations),
      parentEdge: new Int32Array(forStations),
      parent: new Int32Array(forStations),
      depth: new Int32Array(forStations),
      group: new Int32Array(forStations),
      reached: new Int32Array(forStations),
    },
    parts: new Map(),
    partList: [],
    lastPart: undefined,
    names: createNameTable(forDimensions),
    lastPartName: -1,
    sortedPartNames: undefined,
    unknownParts: new Set(),
    axes: [],
    ringed: new Set(),
    shownRings: undefined,
    walk: 0,
    reach: 0,
    isFilling: false,
    reading: undefined,
  };
}

/** Doubles the room of every column and list of a table. */
function makeRoom(table: DimensionColumns | StationColumns, capacity: number): void {
  for (const [name, column] of Object.entries(table)) {
    if (Array.isArray(column)) while (column.length < capacity) column.push(undefined);
    else if (column instanceof Float64Array) Object.assign(table, { [name]: grown(column, Float64Array, capacity) });
    else if (column instanceof Int32Array) Object.assign(table, { [name]: grown(column, Int32Array, capacity) });
    else if (column instanceof Uint8Array) Object.assign(table, { [name]: grown(column, Uint8Array, capacity) });
  }
  for (const rows of 'operands' in table ? [table.operands, table.dependents, table.mentioned] : [table.edges]) {
    widenRows(rows, capacity);
  }
}

function grown<T extends Float64Array | Int32Array | Uint8Array>(
  column: T,
  make: new (length: number) => T,
  capacity: number,
): T {
  const longer = new make(capacity);
  longer.set(column as never);
  return longer;
}

/** The slot of a dimension, made when it is new. */
export function dimensionSlot(state: State, id: DimensionId, part: PartState): number {
  const d = state.dimensions;
  // While a whole build is taken in, every dimension is new: looking for it first would double the cost.
  const known = state.isFilling ? undefined : d.slots.get(id);
  if (known !== undefined) return known;
  const slot = d.count++;
  if (slot === d.value.length) makeRoom(d, slot * 2);
  d.ids[slot] = id;
  d.slots.add(id, slot);
  d.parts[slot] = part;
  d.value[slot] = d.written[slot] = Number.NaN;
  d.minus[slot] = d.plus[slot] = Number.NaN;
  d.writtenMinus[slot] = d.writtenPlus[slot] = Number.NaN;
  d.status[slot] = EMPTY;
  d.axis[slot] = d.from[slot] = d.to[slot] = -1;
  return slot;
}

/** The slot of a station, made when it is new: a dimension may speak of a station before it comes. */
export function stationSlot(state: State, id: StationId): number {
  const s = state.stations;
  const known = s.slots.get(id);
  if (known !== undefined) return known;
  const slot = s.count++;
  if (slot === s.at.length) makeRoom(s, slot * 2);
  s.ids[slot] = id;
  s.slots.add(id, slot);
  s.edgesSorted[slot] = 1;
  return slot;
}

export function partState(state: State, id: PartId): PartState {
  // Records of one part mostly come one after another.
  if (state.lastPart?.id === id) return state.lastPart;
  const known = state.parts.get(id);
  if (known) {
    state.lastPart = known;
    return known;
  }
  const part: PartState = {
    id,
    slot: state.partList.length,
    record: undefined,
    lastName: -1,
    sortedNames: undefined,
    unknowns: undefined,
    axes: [undefined, undefined, undefined],
    shownAxes: undefined,
  };
  state.parts.set(id, part);
  state.partList.push(part);
  state.lastPart = part;
  return part;
}

export function axisState(state: State, part: PartState, axis: 'X' | 'Y' | 'Z'): AxisState {
  const index = axis === 'X' ? 0 : axis === 'Y' ? 1 : 2;
  const known = part.axes[index];
  if (known) return known;
  const made: AxisState = {
    slot: state.axes.length,
    part,
    axis,
    stations: [],
    edges: [],
    sorted: true,
    dirty: false,
    sequence: NONE,
    origins: NONE,
    conflicts: NONE,
    banned: undefined,
    shown: undefined,
    before: undefined,
  };
  part.axes[index] = made;
  state.axes.push(made);
  return made;
}
