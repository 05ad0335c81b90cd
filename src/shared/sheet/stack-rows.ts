import type { DimensionId } from '../base/ids.ts';
import { overlap } from './box.ts';
import type { RowFigure } from './figure.ts';
import { ARROW_MM, arrowMark, lineMark, type MarkOwner } from './marks.ts';
import type { Box, Mark, Point, TextMark } from './sheet.ts';
import { FIGURE_MM, textMark, textWidth } from './text.ts';
import type { Shown, ViewPicture, Way } from './view-picture.ts';

/** Distance of the first row from the view, and of each row from the one before, mm. */
const FIRST_ROW_MM = 9;
const ROW_MM = 7;
const MOST_ROWS = 14;
/** An extension line begins so far from the outline and ends so far beyond its dimension line. */
const GAP_MM = 1;
const BEYOND_MM = 2;
const TAIL_MM = 6;

/** Costs of what a reader dislikes, against one mm of extension line. */
const COST = { row: 15, crossing: 35, throughText: 300, arrowsOutside: 4, textOutside: 20 };

/** The dimension lines of one view, in mm of paper from where zero of the part lies. */
export interface StackedRows {
  readonly marks: readonly Mark[];
  readonly texts: readonly Box[];
  /** Dimension and extension lines, each a thin rectangle. */
  readonly lines: readonly Box[];
  /** All that the view and its rows cover. */
  readonly reach: Box;
  readonly missing: readonly DimensionId[];
}

interface Lines {
  readonly texts: Box[];
  readonly dimensions: { readonly way: Way; readonly box: Box }[];
  readonly extensions: { readonly way: Way; readonly box: Box }[];
}

interface Trial {
  readonly cost: number;
  readonly side: -1 | 1;
  /** Place of the dimension line across its way. */
  readonly level: number;
  readonly text: TextMark;
  readonly lineFrom: number;
  readonly lineTo: number;
  readonly arrowsInside: boolean;
  readonly line: Box;
  readonly extensions: readonly [Box, Box];
}

/**
 * Puts the figures of a view into rows outside it, short ones inside long ones, on the side where their extension lines are
 * short and cross little.
 * @param times mm of paper for a mm of the part.
 * @param first what stands there already.
 */
export function stackRows(
  view: ViewPicture,
  figures: readonly RowFigure[],
  times: number,
  first: { readonly texts: readonly Box[]; readonly lines: readonly Box[] },
): StackedRows {
  const placed: Lines = {
    texts: [...first.texts],
    dimensions: [],
    extensions: [...first.lines].map((box) => ({ way: 'across', box })),
  };
  const marks: Mark[] = [];
  const missing: DimensionId[] = [];
  const body = scaleBox(view.box, times);
  const order = figures
    .map((figure, i) => ({ figure, i, span: Math.round((figure.to - figure.from) * 1e6) }))
    .sort((a, b) => a.span - b.span || a.figure.from - b.figure.from || a.i - b.i);
  for (const { figure } of order) {
    const best = bestOf(view, figure, times, body, placed);
    if (!best) {
      missing.push(figure.dimension);
      continue;
    }
    placed.texts.push(best.text.box);
    placed.dimensions.push({ way: figure.way, box: best.line });
    for (const box of best.extensions) placed.extensions.push({ way: figure.way, box });
    marks.push(...marksOf(figure, best, times));
  }
  const lines = [...placed.dimensions, ...placed.extensions].map(({ box }) => box);
  return { marks, texts: placed.texts, lines, reach: around([body, ...placed.texts, ...lines]), missing };
}

const scaleBox = ({ left, bottom, right, top }: Box, times: number): Box => ({
  left: left * times,
  bottom: bottom * times,
  right: right * times,
  top: top * times,
});

const around = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  bottom: Math.min(...boxes.map(({ bottom }) => bottom)),
  right: Math.max(...boxes.map(({ right }) => right)),
  top: Math.max(...boxes.map(({ top }) => top)),
});

/** A point so far along the way and so far across it. */
const pointIn = (way: Way, along: number, level: number): Point => (way === 'across' ? [along, level] : [level, along]);

/** A rectangle about a straight line, `half` to each side. */
function thin([ax, ay]: Point, [bx, by]: Point, half: number): Box {
  const isLevel = ay === by;
  const [px, py] = isLevel ? [0, half] : [half, 0];
  return {
    left: Math.min(ax, bx) - px,
    right: Math.max(ax, bx) + px,
    bottom: Math.min(ay, by) - py,
    top: Math.max(ay, by) + py,
  };
}

function bestOf(view: ViewPicture, figure: RowFigure, times: number, body: Box, placed: Lines): Trial | undefined {
  const { way } = figure;
  const [low, high] = way === 'across' ? [body.bottom, body.top] : [body.left, body.right];
  const shown = [view.shownAt(way, figure.from), view.shownAt(way, figure.to)] as const;
  let best: Trial | undefined;
  for (const side of [-1, 1] as const) {
    const starts = shown.map((one) => startOf(one, side, times, side < 0 ? low : high)) as [number, number];
    for (let row = 0; row < MOST_ROWS; row++) {
      const level = side < 0 ? low - FIRST_ROW_MM - row * ROW_MM : high + FIRST_ROW_MM + row * ROW_MM;
      const base = COST.row * row + Math.abs(level - starts[0]) + Math.abs(level - starts[1]);
      if (best && base >= best.cost) break;
      for (const trial of trialsAt(figure, times, side, level, starts)) {
        const cost = base + trial.cost + costOf(trial, way, placed);
        if (!best || cost < best.cost) best = { ...trial, cost };
      }
    }
  }
  return best && best.cost < Infinity ? best : undefined;
}

/** Where an extension line starts: at the outline on its side, else at the border of the view. */
const startOf = ({ plainness, low, high }: Shown, side: -1 | 1, times: number, border: number): number =>
  plainness === 0 ? border : (side < 0 ? low : high) * times;

/** The ways to write a figure at a level, with what each costs by itself. */
function trialsAt(
  { way, from, to, text: { text, style, underlined }, view, stands }: RowFigure,
  times: number,
  side: -1 | 1,
  level: number,
  starts: readonly [number, number],
): readonly Trial[] {
  const [a, b] = [from * times, to * times];
  const width = textWidth(text, FIGURE_MM);
  const turn = way === 'across' ? 0 : 90;
  const write = (along: number, anchor: TextMark['anchor']) =>
    // Above the line: for upright ways that is to its left (ISO 129-1:2018, read from the bottom or the right).
    textMark({
      text,
      at: pointIn(way, along, way === 'across' ? level + 1 : level - 1),
      heightMm: FIGURE_MM,
      anchor,
      turn,
      style,
      underlined,
      stands,
      view,
    });
  const end = level + side * BEYOND_MM;
  const extension = (along: number, start: number) =>
    thin(pointIn(way, along, start + side * GAP_MM), pointIn(way, along, end), 0.2);
  const extensions = [extension(a, starts[0]), extension(b, starts[1])] as const;
  const trial = (cost: number, mark: TextMark, lineFrom: number, lineTo: number, arrowsInside: boolean): Trial => ({
    cost,
    side,
    level,
    text: mark,
    lineFrom,
    lineTo,
    arrowsInside,
    line: thin(pointIn(way, lineFrom, level), pointIn(way, lineTo, level), 0.3),
    extensions,
  });
  const middle = (a + b) / 2;
  if (b - a >= width + 2 * ARROW_MM + 1) return [trial(0, write(middle, 'middle'), a, b, true)];
  const trials: Trial[] = [];
  if (b - a >= width + 1) {
    trials.push(trial(COST.arrowsOutside, write(middle, 'middle'), a - TAIL_MM, b + TAIL_MM, false));
  }
  const arrowsInside = b - a >= 2 * ARROW_MM + 2;
  const tail = arrowsInside ? 0 : TAIL_MM;
  const aside = ARROW_MM + 1.5;
  trials.push(
    trial(COST.textOutside, write(b + aside, 'start'), a - tail, b + aside + width + 1, arrowsInside),
    trial(COST.textOutside, write(a - aside, 'end'), a - aside - width - 1, b + tail, arrowsInside),
  );
  return trials;
}

function costOf({ text, line, extensions }: Trial, way: Way, placed: Lines): number {
  let cost = 0;
  for (const other of placed.texts) {
    if (overlap(text.box, other, 0.6)) return Infinity;
    if (overlap(line, other)) cost += COST.throughText;
    for (const extension of extensions) if (overlap(extension, other)) cost += COST.throughText;
  }
  for (const other of placed.dimensions) {
    if (overlap(text.box, other.box)) cost += COST.throughText;
    if (other.way === way) {
      // In one row lines may meet at their ends, on a common extension line.
      if (overlap(line, other.box, -1e-6)) return Infinity;
      for (const extension of extensions) if (overlap(extension, shrunk(other.box, way))) cost += COST.crossing;
    } else if (overlap(line, other.box)) cost += COST.crossing;
  }
  const inner = shrunk(line, way);
  for (const other of placed.extensions) {
    if (overlap(text.box, other.box)) cost += COST.throughText;
    if (overlap(inner, other.box)) cost += COST.crossing;
  }
  return cost;
}

/** A line without its ends, where it touches its own extension lines and those of its neighbours. */
const shrunk = ({ left, right, bottom, top }: Box, way: Way): Box =>
  way === 'across'
    ? { left: left + 0.5, right: right - 0.5, bottom, top }
    : { left, right, bottom: bottom + 0.5, top: top - 0.5 };

function marksOf(
  figure: RowFigure,
  { level, side, text, lineFrom, lineTo, arrowsInside, extensions }: Trial,
  times: number,
): readonly Mark[] {
  const {
    way,
    view,
    stands,
    ends,
    text: { style },
  } = figure;
  const owner: MarkOwner = { view, stands, style };
  const marks: Mark[] = [];
  extensions.forEach((box, i) => {
    const along = (i === 0 ? figure.from : figure.to) * times;
    const [low, high] = way === 'across' ? [box.bottom, box.top] : [box.left, box.right];
    const station = ends[i];
    const points = [pointIn(way, along, side < 0 ? high : low), pointIn(way, along, side < 0 ? low : high)];
    marks.push(
      lineMark({ ...owner, stands: station === undefined ? stands : [station, ...stands] }, 'extension', points),
    );
  });
  marks.push(lineMark(owner, 'dimension', [pointIn(way, lineFrom, level), pointIn(way, lineTo, level)]));
  const outwards = arrowsInside ? 1 : -1;
  const [dx, dy] = pointIn(way, 1, 0);
  marks.push(
    arrowMark(owner, pointIn(way, figure.from * times, level), [-outwards * dx, -outwards * dy]),
    arrowMark(owner, pointIn(way, figure.to * times, level), [outwards * dx, outwards * dy]),
    text,
  );
  return marks;
}
