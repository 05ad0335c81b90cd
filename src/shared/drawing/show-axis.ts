import type { DimensionId } from '../base/ids.ts';
import { measureLoop, type Step } from './constraints.ts';
import type { AxisDrawing, Band, Conflict, Loop, PlacedStation, StationGroup } from './drawing.ts';
import { later } from './keep.ts';
import { loopsOf } from './loops.ts';
import type { AxisState, State } from './state.ts';
import { suggestTies } from './ties.ts';

// Paths and loops of a very deep axis would together be as long as its square: those are made one by one, when read.
const EAGER_STEPS_PER_STATION = 32;

/** An axis as it is handed out. It must be placed. */
export function showAxis(state: State, axis: AxisState): AxisDrawing {
  const s = state.stations;
  const { stations, origins } = axis;
  const first = origins[0];
  return {
    part: axis.part.id,
    axis: axis.axis,
    datum: first !== undefined && s.records[first]!.datum ? s.ids[first]! : undefined,
    stations: showStations(state, axis),
    groups: showGroups(state, stations, origins),
    loops: loopsOf(state, axis).map((steps) => showLoop(state, steps)),
    conflicts: axis.conflicts.map((conflict) => ({
      dimensions: conflict.steps.map(({ edge }) => state.dimensions.ids[edge]!),
      loop: showLoop(state, conflict.steps),
      suspects: conflict.suspects.map(({ edge, wouldBe, slip }) => ({
        dimension: state.dimensions.ids[edge]!,
        wouldBe,
        slip,
      })),
    })) satisfies Conflict[],
    ties: origins.length > 1 ? suggestTies(state, axis) : [],
  };
}

function bandAt(state: State, station: number): Band {
  const s = state.stations;
  return {
    minus: s.minus[station]!,
    plus: s.plus[station]!,
    rss: Math.sqrt(s.variance[station]!),
    rssCentre: s.shift[station]!,
  };
}

function showStations(state: State, axis: AxisState): PlacedStation[] {
  const s = state.stations;
  const { stations } = axis;
  let total = 0;
  for (const station of stations) total += s.depth[station]!;
  const eager = total <= EAGER_STEPS_PER_STATION * stations.length;
  // Read later, the path must still be that of this placing: keep what it was placed by.
  const places = eager ? undefined : new Map(stations.map((station, i) => [station, i]));
  const parents = places && stations.map((station) => places.get(s.parent[station]!) ?? -1);
  const edges = places && stations.map((station) => s.parentEdge[station]!);
  return stations.map((station, i) => {
    const placed = {
      id: s.ids[station]!,
      group: s.group[station]!,
      at: s.at[station]!,
      band: bandAt(state, station),
    };
    if (!parents || !edges) return { ...placed, path: pathTo(state, station) };
    const path = (): readonly DimensionId[] => {
      const found: DimensionId[] = [];
      for (let at = i; parents[at]! >= 0; at = parents[at]!) found.push(state.dimensions.ids[edges[at]!]!);
      return found.reverse();
    };
    return later(placed, 'path', path);
  });
}

/** The dimensions from a station's origin to it. */
function pathTo(state: State, station: number): DimensionId[] {
  const s = state.stations;
  const path = new Array<DimensionId>(s.depth[station]!);
  let at = station;
  for (let i = path.length - 1; i >= 0; i--) {
    path[i] = state.dimensions.ids[s.parentEdge[at]!]!;
    at = s.parent[at]!;
  }
  return path;
}

function showGroups(state: State, stations: readonly number[], origins: readonly number[]): StationGroup[] {
  const s = state.stations;
  const groups = origins.map((origin) => ({
    origin: s.ids[origin]!,
    stations: [] as StationGroup['stations'][number][],
  }));
  for (const station of stations) groups[s.group[station]!]!.stations.push(s.ids[station]!);
  return groups;
}

function showLoop(state: State, steps: readonly Step[]): Loop {
  const d = state.dimensions;
  const { error, worstMinus, worstPlus, rss, contradicts } = measureLoop(steps, d.value, d.minus, d.plus);
  return {
    edges: steps.map(({ edge, sign }) => ({ dimension: d.ids[edge]!, sign })),
    closingError: error,
    worstMinus,
    worstPlus,
    rss,
    verdict: contradicts ? 'contradiction' : 'redundant',
  };
}
