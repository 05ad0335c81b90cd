import type { Source } from '../build/dimension.ts';
import type { AxisConflict, AxisSuspect } from './axis-conflict.ts';
import { type Block, doubtfulBlocks } from './blocks.ts';
import { type ChainGraph, measureIn, type Step, spanOf, testBlock } from './constraints.ts';
import { LENGTH_SLACK_MM } from './slack.ts';
import { slipBetween } from './slips.ts';
import type { AxisState, State } from './state.ts';

export interface Conflicts {
  readonly conflicts: readonly AxisConflict[];
  /** Dimensions that explain all contradictions of their block alone: placing goes without them. */
  readonly banned: ReadonlySet<number> | undefined;
}

/**
 * The contradictions of a placed axis.
 *
 * If some dimensions each explain all contradictions of a block, the block has one conflict and these are its suspects;
 * if that is one dimension only, placing goes without it, so that one wrong figure does not move the rest. Otherwise the
 * block has several faults: then conflicts are listed so that without the first suspect of each, all the rest can hold.
 */
export function findConflicts(state: State, axis: AxisState): Conflicts {
  const conflicts: AxisConflict[] = [];
  const banned = new Set<number>();
  for (const block of doubtfulBlocks(state, axis)) conflicts.push(...conflictsOf(state, block, banned));
  return { conflicts, banned: banned.size > 0 ? banned : undefined };
}

// Testing a dimension costs a search of its block: beyond so much work the rest go untested, and none is called the one.
const TEST_BUDGET = 20_000_000;
const FEWEST_TESTS = 64;

function conflictsOf(state: State, block: Block, banned: Set<number>): AxisConflict[] {
  const graph = graphOf(state, block);
  let gone: ReadonlySet<number> = new Set<number>();
  let { cycle } = testBlock(graph, gone);
  if (!cycle) return [];
  const explained = explainers(graph, cycle);
  if (explained.suspects.length > 0) {
    const suspects = ranked(state, block, graph, cycle, explained.suspects, explained.witnesses);
    if (suspects.length === 1 && explained.complete) banned.add(suspects[0]!.edge);
    return [{ steps: outward(block, cycle), suspects }];
  }
  const found: AxisConflict[] = [];
  while (cycle) {
    const { error } = measureIn(graph, cycle);
    const each = cycle.map(({ edge, sign }) => ({ edge, wouldBe: graph.value[edge]! - sign * error }));
    const suspects = ranked(state, block, graph, cycle, each, explained.witnesses);
    found.push({ steps: outward(block, cycle), suspects });
    gone = new Set([...gone, block.edges.indexOf(suspects[0]!.edge)]);
    cycle = testBlock(graph, gone).cycle;
  }
  return found;
}

interface Reading {
  readonly edge: number;
  readonly wouldBe: number;
}

interface Explained {
  readonly suspects: readonly Reading[];
  /** Contradictory loops met on the way. */
  readonly witnesses: readonly (readonly Step[])[];
  /** Every dimension that might explain the block was tested. */
  readonly complete: boolean;
}

/** The dimensions each of which, left out, lets all the rest of the block hold. They must lie on every bad loop. */
function explainers(graph: ChainGraph, cycle: readonly Step[]): Explained {
  const edges = graph.value.length;
  if (edges === cycle.length) {
    // The block is one plain loop: any of its dimensions would do.
    const { error } = measureIn(graph, cycle);
    const suspects = cycle.map(({ edge, sign }) => ({ edge, wouldBe: graph.value[edge]! - sign * error }));
    return { suspects, witnesses: [cycle], complete: true };
  }
  const witnesses: (readonly Step[])[] = [cycle];
  const suspects: Reading[] = [];
  let left = Math.max(FEWEST_TESTS, TEST_BUDGET / edges);
  // In list order, so that it makes no difference which way the loop was found.
  let candidates = cycle.map(({ edge }) => edge).sort((a, b) => a - b);
  while (candidates.length > 0 && left-- > 0) {
    const edge = candidates[0]!;
    candidates = candidates.slice(1);
    const gone = new Set([edge]);
    const { cycle: other, placing, easy } = testBlock(graph, gone);
    if (other) {
      witnesses.push(other);
      const on = new Set(other.map((step) => step.edge));
      candidates = candidates.filter((candidate) => on.has(candidate));
      continue;
    }
    const from = graph.from[edge]!;
    const to = graph.to[edge]!;
    let wouldBe = placing.at[to]! - placing.at[from]!;
    if (!easy) {
      // The rest holds only by using its limits: keep the reading within what that leaves.
      const [least, most] = spanOf(graph, gone, from, to);
      wouldBe = Math.min(Math.max(wouldBe, least - graph.high[edge]!), most - graph.low[edge]!);
    }
    suspects.push({ edge, wouldBe });
  }
  return { suspects, witnesses, complete: candidates.length === 0 };
}

// Less trusted first: what was sketched in before what was worked out, drawn, or measured on the thing itself.
const DOUBT: Readonly<Record<Source, number>> = { assumed: 0, derived: 1, drawn: 2, measured: 3 };

// A slip is recognised within the loop's own limits, but no wider than this share of the figure.
const SLIP_SHARE = 0.005;

function ranked(
  state: State,
  block: Block,
  graph: ChainGraph,
  cycle: readonly Step[],
  readings: readonly Reading[],
  witnesses: readonly (readonly Step[])[],
): readonly AxisSuspect[] {
  const d = state.dimensions;
  const { worstMinus, worstPlus } = measureIn(graph, cycle);
  const hits = new Map<number, number>();
  for (const steps of witnesses) for (const { edge } of steps) hits.set(edge, (hits.get(edge) ?? 0) + 1);
  const rows = readings.map(({ edge, wouldBe }) => {
    const slot = block.edges[edge]!;
    const near = Math.max(LENGTH_SLACK_MM, Math.min((worstPlus - worstMinus) / 2, SLIP_SHARE * Math.abs(wouldBe)));
    // A formula is not written as a number, so no slip of the pen explains its value.
    const isNumber = d.formulas[slot] === undefined;
    const perUnit = d.units[slot] === 'in' ? 25.4 : 1;
    const slip = isNumber ? slipBetween(graph.value[edge]!, wouldBe, perUnit, near) : undefined;
    return {
      suspect: { edge: slot, wouldBe: wouldBe + 0, slip },
      slip: slip ? 0 : 1,
      hits: hits.get(edge) ?? 0,
      doubt: DOUBT[d.records[slot]!.source],
      width: graph.high[edge]! - graph.low[edge]!,
      edge,
    };
  });
  rows.sort((a, b) => a.slip - b.slip || b.hits - a.hits || a.doubt - b.doubt || b.width - a.width || a.edge - b.edge);
  return rows.map(({ suspect }) => suspect);
}

/** A loop in slots, from its first dimension in list order, walked from that one's first station to its second. */
function outward(block: Block, cycle: readonly Step[]): readonly Step[] {
  let first = 0;
  cycle.forEach(({ edge }, i) => {
    if (edge < cycle[first]!.edge) first = i;
  });
  let steps = [...cycle.slice(first), ...cycle.slice(0, first)];
  if (steps[0]!.sign < 0) {
    steps = [steps[0]!, ...steps.slice(1).reverse()].map(({ edge, sign }) => ({ edge, sign: sign > 0 ? -1 : 1 }));
  }
  return steps.map(({ edge, sign }) => ({ edge: block.edges[edge]!, sign }));
}

function graphOf(state: State, block: Block): ChainGraph {
  const d = state.dimensions;
  const index = new Map(block.stations.map((station, i) => [station, i]));
  const count = block.edges.length;
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  const value = new Float64Array(count);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  const at: number[][] = block.stations.map(() => []);
  block.edges.forEach((slot, edge) => {
    from[edge] = index.get(d.from[slot]!)!;
    to[edge] = index.get(d.to[slot]!)!;
    value[edge] = d.value[slot]!;
    low[edge] = Number.isNaN(d.minus[slot]!) ? 0 : d.minus[slot]!;
    high[edge] = Number.isNaN(d.plus[slot]!) ? 0 : d.plus[slot]!;
    at[from[edge]!]!.push(edge);
    if (to[edge] !== from[edge]) at[to[edge]!]!.push(edge);
  });
  return { size: block.stations.length, from, to, value, low, high, at };
}
