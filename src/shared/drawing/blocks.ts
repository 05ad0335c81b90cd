import { LENGTH_SLACK_MM } from './slack.ts';
import { type AxisState, type State, VALUED } from './state.ts';

/** Stations and dimensions that closed chains hold together: every two of its dimensions lie on a common loop. */
export interface Block {
  /** Slots, in the order of placing. */
  readonly stations: readonly number[];
  /** Slots, in list order. */
  readonly edges: readonly number[];
}

/**
 * The blocks (biconnected components) of a placed axis in which some dimension is not met within its own limits, in the
 * list order of their first dimensions. The loops that the placing leaves open share a dimension exactly within a block,
 * so blocks are found by joining the dimensions along each such loop.
 */
export function doubtfulBlocks(state: State, axis: AxisState): readonly Block[] {
  const s = state.stations;
  const d = state.dimensions;
  const { sequence } = axis;
  const index = new Map<number, number>();
  sequence.forEach((station, i) => {
    index.set(station, i);
  });
  // A station stands for the dimension that places it. `top` is the uppermost station of a joined set.
  const leader = Int32Array.from(sequence, (_, i) => i);
  const top = Int32Array.from(sequence, (station) => (s.parent[station]! < 0 ? -1 : index.get(s.parent[station]!)!));
  const depth = Int32Array.from(sequence, (station) => s.depth[station]!);
  const find = (i: number): number => {
    let at = i;
    while (leader[at] !== at) {
      leader[at] = leader[leader[at]!]!;
      at = leader[at]!;
    }
    return at;
  };
  const join = (a: number, b: number): number => {
    const one = find(a);
    const two = find(b);
    if (one === two) return one;
    leader[two] = one;
    if (depth[top[two]!]! < depth[top[one]!]!) top[one] = top[two]!;
    return one;
  };
  const loose: { readonly edge: number; readonly station: number; readonly fails: boolean }[] = [];
  for (const edge of axis.edges) {
    if (d.status[edge] !== VALUED) continue;
    const from = d.from[edge]!;
    const to = d.to[edge]!;
    if (s.parentEdge[to] === edge || s.parentEdge[from] === edge) continue;
    let a = index.get(from)!;
    let b = index.get(to)!;
    // Climb first and join after: half joined, a set's uppermost station may lie on the other side of the loop.
    const sets: number[] = [];
    while (a !== b) {
      if (depth[a]! < depth[b]!) [a, b] = [b, a];
      const leading = find(a);
      sets.push(leading);
      a = top[leading]!;
    }
    const set = sets.reduce((joined, next) => (joined < 0 ? next : join(joined, next)), -1);
    const off = s.at[to]! - s.at[from]! - d.value[edge]!;
    const low = Number.isNaN(d.minus[edge]!) ? 0 : d.minus[edge]!;
    const high = Number.isNaN(d.plus[edge]!) ? 0 : d.plus[edge]!;
    loose.push({ edge, station: set, fails: off < low - LENGTH_SLACK_MM || off > high + LENGTH_SLACK_MM });
  }
  const blocks = new Map<number, { stations: Set<number>; edges: number[]; fails: boolean }>();
  const blockOf = (leading: number) => {
    const known = blocks.get(leading);
    if (known) return known;
    const made = { stations: new Set<number>(), edges: [], fails: false };
    blocks.set(leading, made);
    return made;
  };
  const found: Block[] = [];
  for (const { edge, station, fails } of loose) {
    if (station < 0) {
      // A dimension from a station to itself is a block of its own.
      if (fails) found.push({ stations: [d.from[edge]!], edges: [edge] });
      continue;
    }
    const block = blockOf(find(station));
    block.edges.push(edge);
    block.fails ||= fails;
  }
  sequence.forEach((station, i) => {
    if (s.parent[station]! < 0) return;
    const block = blocks.get(find(i));
    if (!block?.fails) return;
    block.edges.push(s.parentEdge[station]!);
    block.stations.add(s.parent[station]!).add(station);
  });
  const place = new Map<number, number>();
  axis.edges.forEach((edge, i) => {
    place.set(edge, i);
  });
  const byPlace = (a: number, b: number): number => place.get(a)! - place.get(b)!;
  for (const block of blocks.values()) {
    if (!block.fails) continue;
    const stations = [...block.stations].sort((a, b) => index.get(a)! - index.get(b)!);
    found.push({ stations, edges: block.edges.sort(byPlace) });
  }
  return found.sort((a, b) => byPlace(a.edges[0]!, b.edges[0]!));
}
