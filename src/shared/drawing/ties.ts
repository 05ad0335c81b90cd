import type { SuggestedTie } from './drawing.ts';
import { type AxisState, type State, VALUED } from './state.ts';

/**
 * For each group of an axis but the first, the tie that would bring it in: a dimension that already stands between it and
 * the first group (or, failing that, any other) but has no value; else the pair of stations nearest in list order, one in
 * the group and one in the first. The datum is offered only when nothing else is there; of equally near pairs, two faces
 * come first, since those are what a rule can be laid between.
 */
export function suggestTies(state: State, axis: AxisState): readonly SuggestedTie[] {
  const s = state.stations;
  const d = state.dimensions;
  const count = axis.origins.length;
  const toFirst: (number | undefined)[] = [];
  const toOther: (number | undefined)[] = [];
  for (const edge of axis.edges) {
    if (d.status[edge] === VALUED) continue;
    const a = s.group[d.from[edge]!]!;
    const b = s.group[d.to[edge]!]!;
    if (a === b) continue;
    if (a === 0 || b === 0) toFirst[a + b] ??= edge;
    else {
      toOther[a] ??= edge;
      toOther[b] ??= edge;
    }
  }
  const nearest = nearestPairs(state, axis);
  const ties: SuggestedTie[] = [];
  for (let group = 1; group < count; group++) {
    const edge = toFirst[group] ?? toOther[group];
    if (edge !== undefined) {
      const from = s.ids[d.from[edge]!]!;
      const to = s.ids[d.to[edge]!]!;
      ties.push({ from, to, dimension: d.ids[edge]!, reason: 'empty-dimension' });
    } else {
      const [from, to] = nearest[group]!;
      ties.push({ from: s.ids[from]!, to: s.ids[to]!, dimension: undefined, reason: 'nearest-in-list' });
    }
  }
  return ties;
}

/** By group: the station of the first group and that of this one which stand nearest in the list. */
function nearestPairs(state: State, axis: AxisState): readonly (readonly [number, number] | undefined)[] {
  const s = state.stations;
  const { stations } = axis;
  const isDatum = (i: number): boolean => s.records[stations[i]!]!.datum;
  const first = stations.map((_, i) => i).filter((i) => s.group[stations[i]!] === 0);
  const others = first.filter((i) => !isDatum(i));
  const targets = others.length > 0 ? others : first;
  const best: { score: readonly number[]; pair: readonly [number, number] }[] = [];
  let next = 0;
  stations.forEach((station, i) => {
    const group = s.group[station]!;
    while (next < targets.length && targets[next]! < i) next++;
    if (group === 0) return;
    for (const j of [targets[next - 1], targets[next]]) {
      if (j === undefined) continue;
      const other = stations[j]!;
      const faces = s.records[station]!.form === 'face' && s.records[other]!.form === 'face';
      const score = [Math.abs(i - j), faces ? 0 : 1, j, i];
      const known = best[group];
      if (!known || isLess(score, known.score)) best[group] = { score, pair: [other, station] };
    }
  });
  return best.map((entry) => entry?.pair);
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((part, at) => part !== b[at]);
  return i >= 0 && a[i]! < b[i]!;
}
