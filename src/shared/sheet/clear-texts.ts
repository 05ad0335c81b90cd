import { joined, without } from './intervals.ts';
import type { Box, LineKind, LineMark, Mark, Point, TextMark } from './sheet.ts';

/** Lines that give way to figures; outlines never do (ISO 129-1:2018: lines are interrupted beside figures). */
const yielding: ReadonlySet<LineKind> = new Set(['hidden', 'centre', 'hatching', 'dimension', 'extension', 'phantom']);
const CLEAR_MM = 0.3;

/** Interrupts thin lines where they would run through a text. */
export function clearTexts(marks: readonly Mark[]): readonly Mark[] {
  const texts = marks.filter((mark) => mark.is === 'text');
  return marks.flatMap((mark): readonly Mark[] =>
    mark.is === 'line' && yielding.has(mark.kind) ? interrupted(mark, texts) : [mark],
  );
}

function interrupted(mark: LineMark, texts: readonly TextMark[]): readonly LineMark[] {
  const points = mark.closed ? [...mark.points, mark.points[0]!] : mark.points;
  const near = texts
    // A dimension line runs close under its own figure.
    .filter(({ stands }) => mark.kind !== 'dimension' || stands[0] !== mark.stands[0])
    .map(({ box }) => box)
    .filter((box) => points.some((point, i) => i > 0 && inBox(points[i - 1]!, point, box)));
  if (near.length === 0) return [mark];
  const runs: Point[][] = [];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const covered = joined(
      near.flatMap((box) => inBox(a, b, box) ?? []),
      0,
    );
    const free = without(0, 1, covered, 1e-9);
    for (let k = 0; k < free.length; k += 2) {
      const last = runs.at(-1)?.at(-1);
      const start = along(a, b, free[k]!);
      if (last && free[k] === 0 && last[0] === a[0] && last[1] === a[1]) runs.at(-1)!.push(along(a, b, free[k + 1]!));
      else runs.push([start, along(a, b, free[k + 1]!)]);
    }
  }
  return runs.map((run) => ({ ...mark, points: run, closed: false }));
}

const along = ([ax, ay]: Point, [bx, by]: Point, t: number): Point =>
  t === 0 ? [ax, ay] : t === 1 ? [bx, by] : [ax + t * (bx - ax), ay + t * (by - ay)];

/** From where to where of the way (0 to 1) it runs within a rectangle let out a little. */
function inBox([ax, ay]: Point, [bx, by]: Point, box: Box): readonly [number, number] | undefined {
  let [from, to] = [0, 1];
  for (const [start, delta, low, high] of [
    [ax, bx - ax, box.left - CLEAR_MM, box.right + CLEAR_MM],
    [ay, by - ay, box.bottom - CLEAR_MM, box.top + CLEAR_MM],
  ] as const) {
    if (delta === 0) {
      if (start <= low || start >= high) return undefined;
      continue;
    }
    const [t0, t1] = [(low - start) / delta, (high - start) / delta];
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  return from < to ? [from, to] : undefined;
}
