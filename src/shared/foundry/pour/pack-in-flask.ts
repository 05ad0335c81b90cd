/** More rows are not tried. */
const MOST_ROWS = 40;

type Sides = readonly [number, number];

/**
 * Most sand that can stand beside and between castings in a flask, mm, when they are set in rows: negative where they do not
 * even fit. Not the best of all arrangements, but one that can be laid.
 */
export function packInFlask(castings: readonly Sides[], length: number, width: number): number {
  let best = -Infinity;
  for (const [l, w] of [
    [length, width],
    [width, length],
  ] as const) {
    for (let rows = 1; rows <= Math.min(castings.length, MOST_ROWS); rows++) {
      for (const turned of [false, true]) best = Math.max(best, coverInRows(castings, rows, l, w, turned));
    }
  }
  return best;
}

/** Rows of as many castings each, all with their longer side along the row, or all across it. */
function coverInRows(castings: readonly Sides[], rows: number, length: number, width: number, turned: boolean): number {
  const each = Math.ceil(castings.length / rows);
  const along = ([a, b]: Sides): number => (turned ? Math.min(a, b) : Math.max(a, b));
  const across = ([a, b]: Sides): number => (turned ? Math.max(a, b) : Math.min(a, b));
  const sorted = [...castings].sort((a, b) => across(b) - across(a));
  let depth = 0;
  let beside = Infinity;
  let count = 0;
  for (let at = 0; at < sorted.length; at += each) {
    const row = sorted.slice(at, at + each);
    depth += Math.max(...row.map(across));
    beside = Math.min(beside, (length - row.reduce((sum, one) => sum + along(one), 0)) / (row.length + 1));
    count++;
  }
  return Math.min(beside, (width - depth) / (count + 1));
}
