import { LENGTH_SLACK_MM } from './slack.ts';

// Whether the dimensions of a block can all hold at once is a system of difference constraints: a dimension from a to b
// of value v and limits [low, high] says v + low ≤ x(b) − x(a) ≤ v + high. It has a solution exactly when no walk round a
// loop has a negative total of upper bounds (Bellman 1958, Ford 1956), and a simple loop of negative total is at once a
// smallest contradiction: take any of its dimensions away and what is left of it is an open chain, which always holds.

/** A walk along one dimension; +1 from its first station to its second. */
export interface Step {
  readonly edge: number;
  readonly sign: 1 | -1;
}

/** The dimensions of a block, numbered in list order, between stations numbered in the order of placing. */
export interface ChainGraph {
  readonly size: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly value: Float64Array;
  /** Permitted deviations, 0 where there are no limits. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** The dimensions at each station, in list order. */
  readonly at: readonly (readonly number[])[];
}

export interface LoopMeasure {
  readonly error: number;
  readonly worstMinus: number;
  readonly worstPlus: number;
  readonly rss: number;
  readonly contradicts: boolean;
}

/** Adds up a loop: see `Loop` for the meaning of the figures. */
export function measureLoop(
  steps: readonly Step[],
  value: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
): LoopMeasure {
  let error = 0;
  let lowest = 0;
  let highest = 0;
  let variance = 0;
  for (const { edge, sign } of steps) {
    const minus = Number.isNaN(low[edge]!) ? 0 : low[edge]!;
    const plus = Number.isNaN(high[edge]!) ? 0 : high[edge]!;
    error += sign * value[edge]!;
    lowest += sign > 0 ? minus : -plus;
    highest += sign > 0 ? plus : -minus;
    variance += ((plus - minus) / 2) ** 2;
  }
  const slack = steps.length * LENGTH_SLACK_MM;
  const contradicts = error + highest < -slack || error + lowest > slack;
  // The true sizes round a loop add up to nothing, so the error is what the deviations make up for, with the other sign.
  return { error: error + 0, worstMinus: 0 - highest, worstPlus: 0 - lowest, rss: Math.sqrt(variance), contradicts };
}

export const measureIn = (graph: ChainGraph, steps: readonly Step[]): LoopMeasure =>
  measureLoop(steps, graph.value, graph.low, graph.high);

export interface Placing {
  readonly at: Float64Array;
  readonly parent: Int32Array;
  readonly parentEdge: Int32Array;
  readonly depth: Int32Array;
}

/** Places a block's stations by breadth-first search without the `gone` dimensions. */
function placeBlock(graph: ChainGraph, gone: ReadonlySet<number>): Placing {
  const { size } = graph;
  const at = new Float64Array(size);
  const parent = new Int32Array(size).fill(-1);
  const parentEdge = new Int32Array(size).fill(-1);
  const depth = new Int32Array(size).fill(-1);
  const queue: number[] = [];
  for (let origin = 0; origin < size; origin++) {
    if (depth[origin]! >= 0) continue;
    depth[origin] = 0;
    queue.push(origin);
    for (let head = queue.length - 1; head < queue.length; head++) {
      const node = queue[head]!;
      for (const edge of graph.at[node]!) {
        const forward = graph.from[edge] === node;
        const other = forward ? graph.to[edge]! : graph.from[edge]!;
        if (depth[other]! >= 0 || gone.has(edge)) continue;
        depth[other] = depth[node]! + 1;
        parent[other] = node;
        parentEdge[other] = edge;
        at[other] = at[node]! + (forward ? graph.value[edge]! : -graph.value[edge]!);
        queue.push(other);
      }
    }
  }
  return { at, parent, parentEdge, depth };
}

/** What a test of a block came to: a loop that contradicts itself, or none, with the placing it was tried from. */
export interface Verdict {
  readonly cycle: readonly Step[] | undefined;
  readonly placing: Placing;
  /** The placing as it is meets every dimension within its own limits. */
  readonly easy: boolean;
}

// Loops as long as a whole machine need not be walked one by one to find the shortest.
const WALK_BUDGET = 2_000_000;

/** Whether all dimensions of a block but the `gone` ones can hold at once. */
export function testBlock(graph: ChainGraph, gone: ReadonlySet<number>): Verdict {
  const placing = placeBlock(graph, gone);
  const failing = failingEdges(graph, gone, placing);
  if (failing.length === 0) return { cycle: undefined, placing, easy: true };
  let shortest: readonly Step[] | undefined;
  let budget = WALK_BUDGET;
  for (const edge of failing) {
    if (budget < 0) break;
    const steps = loopThrough(graph, placing, edge, shortest ? shortest.length - 1 : graph.size + 1);
    budget -= steps?.length ?? shortest?.length ?? 0;
    if (steps && measureIn(graph, steps).contradicts) shortest = steps;
  }
  const cycle = shortest ?? negativeCycle(graph, gone, placing.at);
  return { cycle: cycle && shorten(graph, gone, cycle), placing, easy: false };
}

function failingEdges(graph: ChainGraph, gone: ReadonlySet<number>, { at, parentEdge }: Placing): number[] {
  const failing: number[] = [];
  for (let edge = 0; edge < graph.value.length; edge++) {
    const from = graph.from[edge]!;
    const to = graph.to[edge]!;
    if (gone.has(edge) || parentEdge[from] === edge || parentEdge[to] === edge) continue;
    const off = at[to]! - at[from]! - graph.value[edge]!;
    if (off < graph.low[edge]! - LENGTH_SLACK_MM || off > graph.high[edge]! + LENGTH_SLACK_MM) failing.push(edge);
  }
  return failing;
}

/** The loop that a dimension closes with the placing: along it, then back; undefined when longer than `most`. */
function loopThrough(graph: ChainGraph, placing: Placing, edge: number, most: number): Step[] | undefined {
  const { parent, parentEdge, depth } = placing;
  const out: Step[] = [{ edge, sign: 1 }];
  const back: Step[] = [];
  let up = graph.to[edge]!;
  let down = graph.from[edge]!;
  while (up !== down) {
    if (out.length + back.length >= most) return undefined;
    if (depth[up]! >= depth[down]!) {
      const by = parentEdge[up]!;
      out.push({ edge: by, sign: graph.from[by] === up ? 1 : -1 });
      up = parent[up]!;
    } else {
      const by = parentEdge[down]!;
      back.push({ edge: by, sign: graph.to[by] === down ? 1 : -1 });
      down = parent[down]!;
    }
  }
  return out.concat(back.reverse());
}

// Relaxing by less than this would chase rounding; it lies far below LENGTH_SLACK_MM.
const RELAX_MM = 1e-10;

/** A loop of negative total, by relaxing bounds from a first guess until they rest or their parents go in a circle. */
function negativeCycle(graph: ChainGraph, gone: ReadonlySet<number>, guess: Float64Array): readonly Step[] | undefined {
  const { size, from, value, low, high } = graph;
  const x = Float64Array.from(guess);
  const parent = new Int32Array(size).fill(-1);
  const by = new Int32Array(size).fill(-1);
  const waits = new Uint8Array(size).fill(1);
  let queue = Array.from({ length: size }, (_, i) => i);
  let relaxed = 0;
  while (queue.length > 0) {
    const next: number[] = [];
    for (const node of queue) {
      waits[node] = 0;
      for (const edge of graph.at[node]!) {
        const forward = from[edge] === node;
        const other = forward ? graph.to[edge]! : from[edge]!;
        if (other === node || gone.has(edge)) continue;
        const bound = forward
          ? x[node]! + value[edge]! + high[edge]! + LENGTH_SLACK_MM
          : x[node]! - value[edge]! - low[edge]! + LENGTH_SLACK_MM;
        if (x[other]! <= bound + RELAX_MM) continue;
        x[other] = bound;
        parent[other] = node;
        by[other] = edge;
        if (waits[other] === 0) {
          waits[other] = 1;
          next.push(other);
        }
        if (++relaxed % size === 0) {
          const found = circle(graph, parent, by);
          if (found) return measureIn(graph, found).contradicts ? found : undefined;
        }
      }
    }
    queue = next;
  }
  return undefined;
}

function circle(graph: ChainGraph, parent: Int32Array, by: Int32Array): Step[] | undefined {
  const seen = new Int32Array(parent.length);
  for (let start = 0; start < parent.length; start++) {
    let node = start;
    while (node >= 0 && seen[node] === 0) {
      seen[node] = start + 1;
      node = parent[node]!;
    }
    if (node < 0 || seen[node] !== start + 1) continue;
    const steps: Step[] = [];
    let at = node;
    do {
      const edge = by[at]!;
      steps.push({ edge, sign: graph.to[edge] === at ? 1 : -1 });
      at = parent[at]!;
    } while (at !== node);
    return steps.reverse();
  }
  return undefined;
}

// Beyond this length nobody reads a loop edge by edge, and looking for short cuts would take long.
const LONGEST_SHORTENED = 2_000;

/** Takes short cuts across a contradictory loop, as long as one of the two halves still contradicts. */
function shorten(graph: ChainGraph, gone: ReadonlySet<number>, cycle: readonly Step[]): readonly Step[] {
  let steps = cycle;
  search: while (steps.length > 2 && steps.length <= LONGEST_SHORTENED) {
    const place = new Map<number, number>();
    steps.forEach(({ edge, sign }, i) => {
      place.set(sign > 0 ? graph.from[edge]! : graph.to[edge]!, i);
    });
    const used = new Set(steps.map(({ edge }) => edge));
    for (const [node, i] of place) {
      for (const edge of graph.at[node]!) {
        const j = graph.from[edge] === node ? place.get(graph.to[edge]!) : undefined;
        if (j === undefined || used.has(edge) || gone.has(edge) || i === j) continue;
        // Stations i and j cut the loop in two chains; the short cut closes each of them.
        const inner = i < j ? steps.slice(i, j) : steps.slice(j, i);
        const outer = i < j ? [...steps.slice(j), ...steps.slice(0, i)] : [...steps.slice(i), ...steps.slice(0, j)];
        const onward = { edge, sign: 1 } as const;
        const backward = { edge, sign: -1 } as const;
        const halves =
          i < j
            ? [
                [...inner, backward],
                [...outer, onward],
              ]
            : [
                [...inner, onward],
                [...outer, backward],
              ];
        const better = halves
          .filter((half) => half.length < steps.length && measureIn(graph, half).contradicts)
          .sort((a, b) => a.length - b.length)[0];
        if (better) {
          steps = better;
          continue search;
        }
      }
    }
    break;
  }
  return steps;
}

/** The range in which the distance from one station to another must lie for all but the `gone` dimensions to hold. */
export function spanOf(
  graph: ChainGraph,
  gone: ReadonlySet<number>,
  from: number,
  to: number,
): readonly [number, number] {
  return [-farthest(graph, gone, to, from), farthest(graph, gone, from, to)];
}

/** The upper bound of x(to) − x(from): the shortest walk in a block that is known to hold. */
function farthest(graph: ChainGraph, gone: ReadonlySet<number>, from: number, to: number): number {
  const x = new Float64Array(graph.size).fill(Number.POSITIVE_INFINITY);
  x[from] = 0;
  const waits = new Uint8Array(graph.size);
  let queue = [from];
  while (queue.length > 0) {
    const next: number[] = [];
    for (const node of queue) {
      waits[node] = 0;
      for (const edge of graph.at[node]!) {
        if (gone.has(edge)) continue;
        const forward = graph.from[edge] === node;
        const other = forward ? graph.to[edge]! : graph.from[edge]!;
        const bound = forward
          ? x[node]! + graph.value[edge]! + graph.high[edge]! + LENGTH_SLACK_MM
          : x[node]! - graph.value[edge]! - graph.low[edge]! + LENGTH_SLACK_MM;
        if (x[other]! <= bound + RELAX_MM) continue;
        x[other] = bound;
        if (waits[other] === 0) {
          waits[other] = 1;
          next.push(other);
        }
      }
    }
    queue = next;
  }
  return x[to]!;
}
