import { passesThrough, stretchIn } from './box.ts';
import { joined, without } from './intervals.ts';
import type { Box, LineKind, LineMark, Mark, Pick, Point } from './sheet.ts';

/** Lines that give way to figures; outlines never do (ISO 129-1:2018: lines are interrupted beside figures). */
const yielding: ReadonlySet<LineKind> = new Set(['hidden', 'centre', 'hatching', 'dimension', 'extension', 'phantom']);
const CLEAR_MM = 0.3;

/** Interrupts thin lines where they would run through a text. */
export function clearTexts(marks: readonly Mark[]): readonly Mark[] {
  const texts = marks.flatMap((mark) => (mark.is === 'text' ? [{ owner: mark.stands[0], box: letOut(mark.box) }] : []));
  return marks.flatMap((mark): readonly Mark[] =>
    mark.is === 'line' && yielding.has(mark.kind) ? interrupted(mark, texts) : [mark],
  );
}

function interrupted(
  mark: LineMark,
  texts: readonly { readonly owner: Pick | undefined; readonly box: Box }[],
): readonly LineMark[] {
  const points = mark.closed ? [...mark.points, mark.points[0]!] : mark.points;
  const near = texts
    // A dimension line runs close under its own figure.
    .filter(({ owner }) => mark.kind !== 'dimension' || owner !== mark.stands[0])
    .map(({ box }) => box)
    .filter((box) => points.some((point, i) => i > 0 && passesThrough(points[i - 1]!, point, box)));
  if (near.length === 0) return [mark];
  const runs: Point[][] = [];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const covered = joined(
      near.flatMap((box) => stretchIn(a, b, box) ?? []),
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

const letOut = ({ left, right, bottom, top }: Box): Box => ({
  left: left - CLEAR_MM,
  right: right + CLEAR_MM,
  bottom: bottom - CLEAR_MM,
  top: top + CLEAR_MM,
});

const along = ([ax, ay]: Point, [bx, by]: Point, t: number): Point =>
  t === 0 ? [ax, ay] : t === 1 ? [bx, by] : [ax + t * (bx - ax), ay + t * (by - ay)];
