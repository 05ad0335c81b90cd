import { joinToBoxes } from './join-to-boxes.ts';
import type { Box, LayoutRequest, MapLayout } from './places.ts';

type SizedNode = LayoutRequest['nodes'][number];

const GAP = 24;
const ROW_GAP = 64;
const FOLD_GAP = 120;
const SWEEPS = 6;

/**
 * Lays out a block of many parts in milliseconds: ranks as in the exact layout, but wide ranks are broken into several
 * rows, and the rows into columns side by side, so that the whole keeps the room's aspect. Lines run straight from box to
 * box and carry no room for labels.
 */
export function layFolded({ nodes, lines }: LayoutRequest, aspect: number): MapLayout {
  const ranks = orderedRanks(nodes, lines);
  const width = nodes.reduce((sum, node) => sum + node.width + GAP, 0) / nodes.length;
  const height = nodes.reduce((sum, node) => sum + node.height + ROW_GAP, 0) / nodes.length;
  const perRow = Math.ceil(Math.sqrt((nodes.length * aspect * height) / width));
  const rows = ranks.flatMap((rank) => evenly(rank, Math.ceil(rank.length / perRow)));
  const widest = Math.max(...rows.map((row) => row.length)) * width;
  const folds = Math.max(1, Math.round(Math.sqrt((aspect * rows.length * height) / widest)));
  const boxes: Record<string, Box> = {};
  let [left, tallest] = [0, 0];
  for (const fold of evenly(rows, folds)) {
    const widths = fold.map((row) => row.reduce((sum, node) => sum + node.width + GAP, -GAP));
    const room = Math.max(...widths);
    let top = 0;
    for (const [i, row] of fold.entries()) {
      let x = left + (room - widths[i]!) / 2;
      for (const node of row) {
        boxes[node.id] = { x, y: top, width: node.width, height: node.height };
        x += node.width + GAP;
      }
      top += Math.max(...row.map((node) => node.height)) + ROW_GAP;
    }
    tallest = Math.max(tallest, top - ROW_GAP);
    left += room + FOLD_GAP;
  }
  const courses = lines.map(({ id, from, to }) => ({ id, from, to, between: [], label: undefined }));
  return { boxes, lines: joinToBoxes(courses, boxes), width: left - FOLD_GAP, height: tallest };
}

/** Cuts a list into that many runs of nearly equal length. */
function evenly<T>(list: readonly T[], count: number): readonly (readonly T[])[] {
  const runs = Math.min(count, list.length);
  return Array.from({ length: runs }, (_, i) =>
    list.slice(Math.round((i * list.length) / runs), Math.round(((i + 1) * list.length) / runs)),
  );
}

/** Every node one rank below the lowest that it comes from; within a rank near to what it is tied to. */
function orderedRanks(nodes: readonly SizedNode[], lines: LayoutRequest['lines']): readonly (readonly SizedNode[])[] {
  const down = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  const up = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  for (const { from, to } of lines) {
    down.get(from)?.push(to);
    up.get(to)?.push(from);
  }
  const rankOf = longestPaths(nodes, down);
  const ranks: SizedNode[][] = [];
  for (const node of nodes) {
    const rank = rankOf.get(node.id)!;
    ranks[rank] ??= [];
    ranks[rank].push(node);
  }
  const place = new Map<string, number>();
  const note = (rank: readonly SizedNode[]) => {
    for (const [i, { id }] of rank.entries()) place.set(id, (i + 0.5) / rank.length);
  };
  for (const rank of ranks) note(rank);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const ties = sweep % 2 === 0 ? up : down;
    for (const rank of sweep % 2 === 0 ? ranks : [...ranks].reverse()) {
      const wanted = new Map(
        rank.map(({ id }) => [id, mean(ties.get(id)!.map((tie) => place.get(tie)!)) ?? place.get(id)!]),
      );
      rank.sort((a, b) => wanted.get(a.id)! - wanted.get(b.id)!);
      note(rank);
    }
  }
  return ranks;
}

const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;

/** The longest way down to each node; a line that closes a ring does not count. */
function longestPaths(
  nodes: readonly SizedNode[],
  down: ReadonlyMap<string, readonly string[]>,
): ReadonlyMap<string, number> {
  const state = new Map<string, 'open' | 'done'>();
  const order: string[] = [];
  const kept = new Map<string, string[]>();
  for (const { id: start } of nodes) {
    if (state.has(start)) continue;
    // By hand, not by recursion: a chain may be as long as the build has parts.
    const stack = [{ id: start, next: 0 }];
    state.set(start, 'open');
    for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
      const to = down.get(top.id)![top.next++];
      if (to === undefined) {
        state.set(top.id, 'done');
        order.push(top.id);
        stack.pop();
      } else if (state.get(to) !== 'open') {
        const list = kept.get(top.id);
        if (list === undefined) kept.set(top.id, [to]);
        else list.push(to);
        if (!state.has(to)) {
          state.set(to, 'open');
          stack.push({ id: to, next: 0 });
        }
      }
    }
  }
  const ranks = new Map<string, number>(nodes.map(({ id }) => [id, 0]));
  for (const id of order.reverse()) {
    for (const to of kept.get(id) ?? []) ranks.set(to, Math.max(ranks.get(to)!, ranks.get(id)! + 1));
  }
  return ranks;
}
