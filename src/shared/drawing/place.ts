import { inListOrder } from '../build/look-up.ts';
import { sortRow } from './rows.ts';
import { LENGTH_SLACK_MM } from './slack.ts';
import { type AxisState, type State, VALUED } from './state.ts';

/** Brings an axis's stations, its dimensions and those at each station into list order, where an edit upset it. */
export function sortAxis(state: State, axis: AxisState): void {
  const stations = state.stations;
  const { records } = state.dimensions;
  if (!axis.sorted) {
    sortIfNeeded(axis.stations, stations.records);
    sortIfNeeded(axis.edges, records);
    axis.sorted = true;
  }
  const inOrder = (a: number, b: number): number => inListOrder(records[a]!, records[b]!);
  for (const station of axis.stations) {
    if (stations.edgesSorted[station]) continue;
    sortRow(stations.edges, station, inOrder);
    stations.edgesSorted[station] = 1;
  }
}

type Listed = { readonly order: number; readonly id: string } | undefined;

function sortIfNeeded(slots: number[], records: readonly Listed[]): void {
  for (let i = 1; i < slots.length; i++) {
    if (inListOrder(records[slots[i - 1]!]!, records[slots[i]!]!) > 0) {
      slots.sort((a, b) => inListOrder(records[a]!, records[b]!));
      return;
    }
  }
}

/**
 * Places an axis's stations by breadth-first search: from the datum, else from the first station in list order; each
 * further group from its first station. Dimensions are taken in list order, so the same drawing is always placed alike.
 * @param banned slots of dimensions to go without.
 */
export function placeStations(state: State, axis: AxisState, banned: ReadonlySet<number> | undefined): void {
  const s = state.stations;
  const { stations } = axis;
  const epoch = ++state.reach;
  // Made to measure: a list that grows by pushing makes room for seventeen.
  const sequence = axis.sequence.length === stations.length ? (axis.sequence as number[]) : stations.slice();
  axis.sequence = sequence;
  const datum = stations.find((slot) => s.records[slot]!.datum);
  const first = datum ?? stations[0];
  if (first === undefined) {
    axis.origins = stations;
    return;
  }
  const origins = [first];
  let placed = spread(state, axis, sequence, 0, first, 0, epoch, banned);
  for (let i = 0; placed < stations.length; i++) {
    const station = stations[i]!;
    if (s.reached[station] === epoch) continue;
    placed = spread(state, axis, sequence, placed, station, origins.length, epoch, banned);
    origins.push(station);
  }
  axis.origins = origins;
}

/** Places all that hangs together with an origin. @returns how many stations are in the sequence then. */
function spread(
  state: State,
  axis: AxisState,
  sequence: number[],
  placed: number,
  origin: number,
  number: number,
  epoch: number,
  banned: ReadonlySet<number> | undefined,
): number {
  const s = state.stations;
  const d = state.dimensions;
  const { at, minus, plus, variance, shift, parent, parentEdge, depth, group, reached, edges } = s;
  const { value, status, from, to, axis: axisOf } = d;
  const { pool } = edges;
  at[origin] = minus[origin] = plus[origin] = variance[origin] = shift[origin] = depth[origin] = 0;
  parent[origin] = parentEdge[origin] = -1;
  group[origin] = number;
  reached[origin] = epoch;
  let end = placed;
  sequence[end++] = origin;
  for (let head = placed; head < end; head++) {
    const station: number = sequence[head]!;
    const start: number = edges.start[station]!;
    const stop: number = start + edges.count[station]!;
    for (let i = start; i < stop; i++) {
      const edge: number = pool[i]!;
      if (status[edge] !== VALUED || axisOf[edge] !== axis.slot) continue;
      const forward: boolean = from[edge] === station;
      const other = forward ? to[edge]! : from[edge]!;
      if (reached[other] === epoch || banned?.has(edge)) continue;
      reached[other] = epoch;
      parent[other] = station;
      parentEdge[other] = edge;
      depth[other] = depth[station]! + 1;
      group[other] = number;
      // A dimension without limits adds nothing to the band: that it has none is a matter for a rule to tell.
      const low = d.minus[edge]!;
      const isBound = !Number.isNaN(low);
      const high = isBound ? d.plus[edge]! : 0;
      const lowest = isBound ? low : 0;
      const centre = (lowest + high) / 2;
      const half = (high - lowest) / 2;
      if (forward) {
        at[other] = at[station]! + value[edge]!;
        minus[other] = minus[station]! + lowest;
        plus[other] = plus[station]! + high;
        shift[other] = shift[station]! + centre;
      } else {
        at[other] = at[station]! - value[edge]!;
        minus[other] = minus[station]! - high;
        plus[other] = plus[station]! - lowest;
        shift[other] = shift[station]! - centre;
      }
      variance[other] = variance[station]! + half * half;
      sequence[end++] = other;
    }
  }
  return end;
}

/** Whether every dimension that placing did not need is met within its own limits: then nothing contradicts. */
export function closesEasily(state: State, axis: AxisState): boolean {
  const s = state.stations;
  const d = state.dimensions;
  for (const edge of axis.edges) {
    if (d.status[edge] !== VALUED) continue;
    const from = d.from[edge]!;
    const to = d.to[edge]!;
    if (s.parentEdge[to] === edge || s.parentEdge[from] === edge) continue;
    const off = s.at[to]! - s.at[from]! - d.value[edge]!;
    const low = d.minus[edge]!;
    if (off < (Number.isNaN(low) ? 0 : low) - LENGTH_SLACK_MM) return false;
    const high = d.plus[edge]!;
    if (off > (Number.isNaN(high) ? 0 : high) + LENGTH_SLACK_MM) return false;
  }
  return true;
}
