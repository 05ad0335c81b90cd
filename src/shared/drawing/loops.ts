import { inListOrder } from '../build/look-up.ts';
import type { Step } from './constraints.ts';
import { rowOf } from './rows.ts';
import { type AxisState, type State, VALUED } from './state.ts';

// A loop of three cannot be made shorter in a way that matters to a reader.
const SHORT_ENOUGH = 3;
// How far to look for a shorter way round: beyond this nobody follows a loop by eye.
const LOOK_AT_MOST = 256;

/**
 * The loops of a placed axis: one per dimension beyond those it was placed by, in list order. Each goes along its own
 * dimension and back by the shortest way over the placing's dimensions and those whose loops come before it; as every
 * loop so has a dimension that no earlier one has, they are a fundamental set. Dimensions under suspicion are left to
 * their own loops, so that one wrong figure does not spoil the loops of others.
 */
export function loopsOf(state: State, axis: AxisState): readonly (readonly Step[])[] {
  const s = state.stations;
  const d = state.dimensions;
  const suspected = new Set(axis.banned);
  for (const { suspects } of axis.conflicts) if (suspects[0]) suspected.add(suspects[0].edge);
  const loops: (readonly Step[])[] = [];
  for (const edge of axis.edges) {
    if (d.status[edge] !== VALUED) continue;
    if (s.parentEdge[d.to[edge]!] === edge || s.parentEdge[d.from[edge]!] === edge) continue;
    const length = lengthByPlacing(state, edge);
    const shorter = length > SHORT_ENOUGH ? shorterWay(state, axis, edge, suspected, length) : undefined;
    loops.push(shorter ?? loopByPlacing(state, edge));
  }
  return loops;
}

/** How long the loop by placing is; not counted further than anyone would follow it. */
function lengthByPlacing(state: State, edge: number): number {
  const { parent, depth } = state.stations;
  let up = state.dimensions.to[edge]!;
  let down = state.dimensions.from[edge]!;
  let length = 1;
  for (; up !== down && length <= LOOK_AT_MOST; length++) {
    if (depth[up]! >= depth[down]!) up = parent[up]!;
    else down = parent[down]!;
  }
  return length;
}

/** Along a dimension, then back the way its stations were placed. */
function loopByPlacing(state: State, edge: number): readonly Step[] {
  const { parent, parentEdge, depth } = state.stations;
  const { from, to } = state.dimensions;
  const out: Step[] = [{ edge, sign: 1 }];
  const back: Step[] = [];
  let up = to[edge]!;
  let down = from[edge]!;
  while (up !== down) {
    if (depth[up]! >= depth[down]!) {
      const by = parentEdge[up]!;
      out.push({ edge: by, sign: from[by] === up ? 1 : -1 });
      up = parent[up]!;
    } else {
      const by = parentEdge[down]!;
      back.push({ edge: by, sign: to[by] === down ? 1 : -1 });
      down = parent[down]!;
    }
  }
  return out.concat(back.reverse());
}

function shorterWay(
  state: State,
  axis: AxisState,
  edge: number,
  suspected: ReadonlySet<number>,
  length: number,
): readonly Step[] | undefined {
  const s = state.stations;
  const d = state.dimensions;
  const own = d.records[edge]!;
  const goal = d.from[edge]!;
  const start = d.to[edge]!;
  const cameBy = new Map<number, number>([[start, -1]]);
  const queue = [start];
  for (let head = 0; head < queue.length && cameBy.size < LOOK_AT_MOST; head++) {
    const station = queue[head]!;
    if (station === goal) break;
    for (const way of rowOf(s.edges, station)) {
      if (way === edge || d.status[way] !== VALUED || d.axis[way] !== axis.slot) continue;
      const other = d.from[way] === station ? d.to[way]! : d.from[way]!;
      if (cameBy.has(other)) continue;
      const places = s.parentEdge[d.to[way]!] === way || s.parentEdge[d.from[way]!] === way;
      if (!places && (suspected.has(way) || inListOrder(d.records[way]!, own) > 0)) continue;
      cameBy.set(other, way);
      queue.push(other);
    }
  }
  if (!cameBy.has(goal)) return undefined;
  const steps: Step[] = [];
  for (let at = goal; at !== start; ) {
    const way = cameBy.get(at)!;
    const forward = d.to[way] === at;
    steps.push({ edge: way, sign: forward ? 1 : -1 });
    at = forward ? d.from[way]! : d.to[way]!;
  }
  steps.push({ edge, sign: 1 });
  return steps.length < length ? steps.reverse() : undefined;
}
