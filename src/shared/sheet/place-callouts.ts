import type { DimensionId } from '../base/ids.ts';
import { overlap, passesThrough, within } from './box.ts';
import type { Callout, Tip } from './figure.ts';
import type { Ink } from './ink.ts';
import { ARROW_MM, arrowMark, lineMark, type MarkOwner } from './marks.ts';
import type { Box, Mark, Point, TextMark, ViewName } from './sheet.ts';
import { FIGURE_MM, textMark, textWidth } from './text.ts';

/** From line to line of the words, mm. */
const LINE_MM = 5.5;
const SHELF_MM = 3;
const LENGTHS = [6, 9, 12, 16, 20, 25, 30, 36, 43, 51, 60, 70, 80];
/** A leader may leave its circle a little aslant. */
const SLANTS = [0, Math.PI / 9, -Math.PI / 9];

/** What callouts must keep clear of, mm of paper. */
export interface Ground {
  readonly frame: Box;
  /** Title block and margin box. */
  readonly taken: readonly Box[];
  readonly texts: readonly Box[];
  readonly lines: readonly Box[];
  /** Boxes of the parts in the views: words stand better beside them. */
  readonly views: readonly Box[];
  readonly ink: Ink;
  toPaper(view: ViewName, at: Point): Point;
}

interface Trial {
  readonly cost: number;
  readonly tip: Point;
  readonly elbow: Point;
  readonly end: Point;
  readonly block: Box;
}

/** Finds a place for each callout in turn; those for which there is none are handed back. */
export function placeCallouts(callouts: readonly Callout[], ground: Ground) {
  const texts = [...ground.texts];
  const leaders: (readonly [Point, Point])[] = [];
  const marks: Mark[] = [];
  const missing: DimensionId[] = [];
  for (const callout of callouts) {
    const best = bestOf(callout, ground, texts, leaders);
    if (!best) {
      missing.push(...callout.lines.flatMap(({ stands }) => stands));
      continue;
    }
    const written = write(callout, best);
    marks.push(...written.marks);
    texts.push(...written.boxes);
    leaders.push([best.tip, best.elbow], [best.elbow, best.end]);
  }
  return { marks, texts, missing };
}

function bestOf(
  { tips, view, lines }: Callout,
  ground: Ground,
  texts: readonly Box[],
  leaders: readonly (readonly [Point, Point])[],
): Trial | undefined {
  const width = Math.max(...lines.map(({ text }) => textWidth(text.text, FIGURE_MM)));
  const size = { width, height: (lines.length - 1) * LINE_MM + 1.4 * FIGURE_MM };
  let best: Trial | undefined;
  for (const { at, out } of tips) {
    const tip = ground.toPaper(view, at);
    for (const slant of SLANTS) {
      const way = turned(out, slant);
      for (const length of LENGTHS) {
        const base = length * 0.9 + (slant === 0 ? 0 : 2);
        if (best && base >= best.cost) break;
        const trial = trialAt(tip, way, length, size);
        const cost = costOf(trial, base, best?.cost ?? Infinity, ground, texts, leaders);
        if (cost < (best?.cost ?? Infinity)) best = { ...trial, cost };
      }
    }
  }
  return best;
}

function turned([x, y]: Tip['out'], angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
}

function trialAt(tip: Point, [dx, dy]: Point, length: number, size: { width: number; height: number }): Trial {
  const elbow: Point = [tip[0] + length * dx, tip[1] + length * dy];
  const isRight = dx >= 0;
  const end: Point = [elbow[0] + (isRight ? SHELF_MM : -SHELF_MM), elbow[1]];
  const left = isRight ? end[0] + 1 : end[0] - 1 - size.width;
  // The leader ends at the middle of the first line.
  const top = elbow[1] + 0.65 * FIGURE_MM;
  return { cost: 0, tip, elbow, end, block: { left, right: left + size.width, top, bottom: top - size.height } };
}

function costOf(
  { tip, elbow, end, block }: Trial,
  base: number,
  /** Beyond this the cost is of no interest. */
  limit: number,
  { frame, taken, lines, views, ink }: Ground,
  texts: readonly Box[],
  leaders: readonly (readonly [Point, Point])[],
): number {
  if (!within(block, frame) || taken.some((box) => overlap(block, box, 1.5))) return Infinity;
  let cost = base + 4 * ink.within(block);
  for (const box of views) if (overlap(block, box)) cost += 6;
  if (cost >= limit) return Infinity;
  for (const box of texts) {
    if (overlap(block, box, 1)) return Infinity;
    if (passesThrough(tip, elbow, box) || passesThrough(elbow, end, box)) cost += 60;
  }
  for (const box of lines) {
    if (overlap(block, box, 0.3)) cost += 60;
    if (passesThrough(tip, elbow, box)) cost += 5;
  }
  if (cost >= limit) return Infinity;
  for (const [a, b] of leaders) {
    if (passesThrough(a, b, block)) cost += 60;
    if (cross(tip, elbow, a, b)) cost += 15;
  }
  return cost >= limit ? Infinity : cost + 0.4 * ink.along(tip, elbow);
}

/** Whether two ways cross. */
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}

function write({ lines, view, stands }: Callout, { tip, elbow, end, block }: Trial) {
  const leader: MarkOwner = { view, stands, style: 'plain' };
  const length = Math.hypot(elbow[0] - tip[0], elbow[1] - tip[1]);
  const back: Point = [(tip[0] - elbow[0]) / length, (tip[1] - elbow[1]) / length];
  const base: Point = [tip[0] - ARROW_MM * back[0], tip[1] - ARROW_MM * back[1]];
  const marks: Mark[] = [lineMark(leader, 'leader', [base, elbow, end]), arrowMark(leader, tip, back)];
  const words = lines.map(
    ({ text: { text, style, underlined }, stands: of }, i): TextMark =>
      textMark({
        text,
        at: [block.left, block.top - 1.15 * FIGURE_MM - i * LINE_MM],
        heightMm: FIGURE_MM,
        style,
        underlined,
        stands: of,
        view,
      }),
  );
  return { marks: [...marks, ...words], boxes: words.map(({ box }) => box) };
}
