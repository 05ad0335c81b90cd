import type { Step } from './constraints.ts';
import type { Distance } from './drawing.ts';
import { rowOf } from './rows.ts';
import { type AxisState, type State, VALUED } from './state.ts';

/** How good a way is: fewest dimensions without limits (their stray is unknown), then narrowest, then shortest. */
interface Cost {
  readonly unbound: number;
  readonly width: number;
  readonly steps: number;
}

const better = (a: Cost, b: Cost): boolean =>
  a.unbound !== b.unbound ? a.unbound < b.unbound : a.width !== b.width ? a.width < b.width : a.steps < b.steps;

/**
 * The distance from one station to another, by the way whose worst case is narrowest: all dimensions must hold at once,
 * so the narrowest says most. Where the drawing closes exactly this is also the difference of the two places; where it
 * closes only within its limits, a distance written between the two reads as written.
 */
export function distanceBetween(state: State, axis: AxisState, from: number, to: number): Distance | undefined {
  const way = narrowest(state, axis, from, to);
  if (!way) return undefined;
  const d = state.dimensions;
  let value = 0;
  let minus = 0;
  let plus = 0;
  let variance = 0;
  let shift = 0;
  for (const { edge, sign } of way) {
    const low = Number.isNaN(d.minus[edge]!) ? 0 : d.minus[edge]!;
    const high = Number.isNaN(d.plus[edge]!) ? 0 : d.plus[edge]!;
    value += sign * d.value[edge]!;
    minus += sign > 0 ? low : -high;
    plus += sign > 0 ? high : -low;
    shift += (sign * (low + high)) / 2;
    variance += ((high - low) / 2) ** 2;
  }
  return {
    value: value + 0,
    band: { minus: minus + 0, plus: plus + 0, rss: Math.sqrt(variance), rssCentre: shift + 0 },
    path: way.map(({ edge, sign }) => ({ dimension: d.ids[edge]!, sign })),
  };
}

/** Dijkstra's search with a binary heap; equally good ways are settled by the list order of dimensions. */
function narrowest(state: State, axis: AxisState, from: number, to: number): readonly Step[] | undefined {
  const s = state.stations;
  const d = state.dimensions;
  if (s.group[from] !== s.group[to]) return undefined;
  const best = new Map<number, Cost>([[from, { unbound: 0, width: 0, steps: 0 }]]);
  const by = new Map<number, number>();
  const settled = new Set<number>();
  const heap: { readonly station: number; readonly cost: Cost }[] = [];
  push(heap, { station: from, cost: best.get(from)! });
  while (heap.length > 0) {
    const { station, cost } = pop(heap);
    if (settled.has(station)) continue;
    settled.add(station);
    if (station === to) break;
    for (const edge of rowOf(s.edges, station)) {
      if (d.status[edge] !== VALUED || d.axis[edge] !== axis.slot || axis.banned?.has(edge)) continue;
      const other = d.from[edge] === station ? d.to[edge]! : d.from[edge]!;
      if (settled.has(other)) continue;
      const isBound = !Number.isNaN(d.minus[edge]!);
      const next: Cost = {
        unbound: cost.unbound + (isBound ? 0 : 1),
        width: cost.width + (isBound ? d.plus[edge]! - d.minus[edge]! : 0),
        steps: cost.steps + 1,
      };
      const known = best.get(other);
      if (known && !better(next, known)) continue;
      best.set(other, next);
      by.set(other, edge);
      push(heap, { station: other, cost: next });
    }
  }
  const way: Step[] = [];
  for (let at = to; at !== from; ) {
    const edge = by.get(at)!;
    const forward = d.to[edge] === at;
    way.push({ edge, sign: forward ? 1 : -1 });
    at = forward ? d.from[edge]! : d.to[edge]!;
  }
  return way.reverse();
}

type Entry = { readonly station: number; readonly cost: Cost };

function push(heap: Entry[], entry: Entry): void {
  heap.push(entry);
  let i = heap.length - 1;
  while (i > 0) {
    const above = (i - 1) >> 1;
    if (!better(entry.cost, heap[above]!.cost)) break;
    heap[i] = heap[above]!;
    i = above;
  }
  heap[i] = entry;
}

function pop(heap: Entry[]): Entry {
  const top = heap[0]!;
  const last = heap.pop()!;
  if (heap.length === 0) return top;
  let i = 0;
  for (;;) {
    let below = 2 * i + 1;
    if (below >= heap.length) break;
    if (below + 1 < heap.length && better(heap[below + 1]!.cost, heap[below]!.cost)) below++;
    if (!better(heap[below]!.cost, last.cost)) break;
    heap[i] = heap[below]!;
    i = below;
  }
  heap[i] = last;
  return top;
}
