import { assert } from '../base/assert.ts';
import type { DimensionId, StationId } from '../base/ids.ts';
import { rowOf } from './rows.ts';
import type { State } from './state.ts';

export interface Reach {
  /** Sorted by id. */
  readonly dimensions: readonly DimensionId[];
  readonly stations: readonly StationId[];
}

/** Every slot that can be reached along `next`, the given ones included. */
function closure(start: readonly number[], next: (slot: number) => Int32Array): Set<number> {
  const seen = new Set(start);
  const stack = [...seen];
  while (stack.length > 0) {
    for (const slot of next(stack.pop()!)) {
      if (slot < 0 || seen.has(slot)) continue;
      seen.add(slot);
      stack.push(slot);
    }
  }
  return seen;
}

function shown(state: State, dimensions: Iterable<number>, stations: Iterable<number>, except: string): Reach {
  const { ids } = state.dimensions;
  return {
    dimensions: Array.from(dimensions, (slot) => ids[slot]!)
      .filter((id) => id !== except)
      .sort(),
    stations: Array.from(stations, (slot) => state.stations.ids[slot]!)
      .filter((id) => id !== except)
      .sort(),
  };
}

/** What moves or changes with a dimension: formulas that name it, straight or through others, and stations placed by any of them. */
export function touches(state: State, slot: number): Reach {
  const d = state.dimensions;
  const s = state.stations;
  const dimensions = closure([slot], (at) => rowOf(d.dependents, at));
  const axes = new Set<number>();
  for (const dimension of dimensions) if (d.axis[dimension]! >= 0) axes.add(d.axis[dimension]!);
  const stations = new Set<number>();
  for (const axis of axes) {
    // A parent stands before its children, so one pass carries the mark down.
    for (const station of state.axes[axis]!.sequence) {
      if (s.parent[station]! < 0) continue;
      if (dimensions.has(s.parentEdge[station]!) || stations.has(s.parent[station]!)) stations.add(station);
    }
  }
  return shown(state, dimensions, stations, d.ids[slot]!);
}

/** What a dimension's value, or a station's place, hangs on. A station hangs on those it is placed from, too. */
export function hangsOn(state: State, id: DimensionId | StationId): Reach {
  const d = state.dimensions;
  const s = state.stations;
  const operandsOf = (at: number): Int32Array => rowOf(d.operands, at);
  const station = s.slots.get(id);
  if (station === undefined || s.axes[station] === undefined) {
    const slot = d.slots.get(id);
    assert(slot !== undefined && d.records[slot], `the dimension or station asked for is in the build (${id})`);
    return shown(state, closure([slot], operandsOf), [], id);
  }
  const path: number[] = [];
  const stations: number[] = [];
  for (let at = station; s.parent[at]! >= 0; at = s.parent[at]!) {
    path.push(s.parentEdge[at]!);
    stations.push(s.parent[at]!);
  }
  return shown(state, closure(path, operandsOf), stations, id);
}
