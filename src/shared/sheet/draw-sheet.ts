import type { DimensionId } from '../base/ids.ts';
import { allOf, type Pieces } from '../base/pieces.ts';
import { arrange } from './arrange.ts';
import { moveBox } from './box.ts';
import { clearTexts } from './clear-texts.ts';
import { type CuttingLine, cuttingLine } from './cutting-line.ts';
import { type Figures, gatherFigures, waysAlong } from './figures.ts';
import { inkOn } from './ink.ts';
import { lineMark, plainOf } from './marks.ts';
import { formsOf, frameOf, type PaperForm, scales } from './paper.ts';
import { type Cut, cutOf, picturesOf } from './pictures.ts';
import { placeCallouts } from './place-callouts.ts';
import {
  type Box,
  type Mark,
  type Paper,
  type Point,
  papers,
  type Scale,
  type Sheet,
  type SheetOptions,
  type SheetSubject,
  type SheetView,
  type Unplaced,
  type UnplacedLine,
  type ViewName,
} from './sheet.ts';
import { type StackedRows, stackRows } from './stack-rows.ts';
import { textMark } from './text.ts';
import { marginBox, marginMarks, titleBlock, titleBox } from './title-block.ts';
import { unplacedWords } from './unplaced-words.ts';
import { drawView, loosePlaces } from './view-marks.ts';
import type { ViewPicture } from './view-picture.ts';

/** How many scales below the greatest that fits are tried for the sake of the dimensions. */
const SCALES_TRIED = 4;
/** On a paper where the part would be smaller than this the next larger paper is looked at, mm. */
const LEAST_VIEW_MM = 55;
/** The largest paper that is taken without being asked for. */
const LARGEST: Paper = 'A2';

/** What is drawn keeps so far from the frame, mm. */
const CLEAR_OF_FRAME_MM = 2;

/** Draws a part on a sheet: views, dimensions, title block, and a list of what the views do not show. */
export const drawSheet = (subject: SheetSubject, options: SheetOptions): Sheet => allOf(drawingSheet(subject, options));

/** The same in pieces. */
export function* drawingSheet(subject: SheetSubject, options: SheetOptions): Pieces<Sheet> {
  const bodies = subject.bodies.filter(({ record }) => subject.state === 'finished' || record.finish !== 'machined');
  const cut = cutOf(subject, options);
  const views = yield* picturesOf(subject, options, bodies, cut);
  const figures = gatherFigures(subject, views, bodies);
  const lineOf = (of: Unplaced): UnplacedLine => ({ of, words: unplacedWords(subject, of) });
  const plain = figures.unplaced.map(lineOf);
  const task: Task = { subject, options, views, figures, cut };
  const first = yield* best(task, plain);
  if (first.missing.length === 0) return finish(task, first, plain);
  // What found no room takes room itself, in the margin box: with that set aside everything is placed anew.
  const noRoom = (ids: readonly DimensionId[]) => [...plain, ...ids.map((id) => lineOf({ why: 'no-room', id }))];
  const second = yield* best(task, noRoom(first.missing));
  return finish(task, second, noRoom(second.missing));
}

interface Task {
  readonly subject: SheetSubject;
  readonly options: SheetOptions;
  readonly views: readonly ViewPicture[];
  readonly figures: Figures;
  readonly cut: Cut | undefined;
}

interface Draft {
  readonly form: PaperForm;
  readonly scale: Scale;
  readonly frame: Box;
  readonly title: Box;
  readonly margin: Box | undefined;
  readonly origins: ReadonlyMap<ViewName, Point>;
  readonly marks: readonly Mark[];
  readonly missing: readonly DimensionId[];
}

/** The smallest paper on which every dimension finds its place and the part is large enough; else the draft that misses fewest. */
function* best(task: Task, lines: readonly UnplacedLine[]): Pieces<Draft> {
  const asked = task.options.paper;
  let found: Draft | undefined;
  for (const paper of asked ? [asked] : papers.slice(0, papers.indexOf(LARGEST) + 1)) {
    for (const form of formsOf(paper)) {
      const draft = bestOn(task, form, lines, asked === undefined && paper !== LARGEST);
      if (draft && (!found || isBetter(draft, found))) found = draft;
      yield;
    }
    if (found?.missing.length === 0) break;
  }
  // The scales go on until anything fits any paper.
  return found ?? draftOf(task, formsOf('A0')[0]!, scales.at(-1)!, [])!;
}

/** @param onlyLegible there are larger papers to turn to when the part would be small on this one. */
function bestOn(task: Task, form: PaperForm, lines: readonly UnplacedLine[], onlyLegible: boolean): Draft | undefined {
  let found: Draft | undefined;
  let tried = 0;
  for (const scale of scales) {
    if (onlyLegible && !isLegible(task, scale)) break;
    const draft = draftOf(task, form, scale, lines);
    if (!draft) continue;
    if (!found || isBetter(draft, found)) found = draft;
    tried++;
    if (draft.missing.length === 0 || tried === SCALES_TRIED) break;
  }
  return found;
}

const isBetter = (draft: Draft, than: Draft): boolean =>
  draft.missing.length < than.missing.length ||
  (draft.missing.length === than.missing.length && ratio(draft.scale) > ratio(than.scale));

const ratio = ({ paper, part }: Scale): number => paper / part;

/** Whether the largest view is large enough for the number of figures about it. */
function isLegible({ views, figures }: Task, scale: Scale): boolean {
  const longest = Math.max(...views.map(({ box }) => Math.max(box.right - box.left, box.top - box.bottom)));
  const wanted = Math.max(LEAST_VIEW_MM, 12 * Math.sqrt(figures.rows.length + figures.callouts.length));
  return longest * ratio(scale) >= wanted;
}

function draftOf(task: Task, form: PaperForm, scale: Scale, lines: readonly UnplacedLine[]): Draft | undefined {
  const { views, figures, options } = task;
  const times = ratio(scale);
  const frame = frameOf(form);
  const inner: Box = {
    left: frame.left + CLEAR_OF_FRAME_MM,
    right: frame.right - CLEAR_OF_FRAME_MM,
    bottom: frame.bottom + CLEAR_OF_FRAME_MM,
    top: frame.top - CLEAR_OF_FRAME_MM,
  };
  // Before any row is looked at: a view that is larger than the frame will not fit with rows either.
  const widest = Math.max(...views.map(({ box }) => box.right - box.left));
  const highest = Math.max(...views.map(({ box }) => box.top - box.bottom));
  if (widest * times > frame.right - frame.left || highest * times > frame.top - frame.bottom) return undefined;
  // A single point may be drawn at any scale: full size it is.
  if (widest === 0 && highest === 0 && scale.part !== scale.paper) return undefined;

  const title = titleBox(frame);
  const margin = marginBox(title, frame, lines);
  const taken = margin ? [title, margin] : [title];
  const stacks = new Map<ViewName, StackedRows>();
  const marks: Mark[] = [];
  const missing: DimensionId[] = [];
  for (const view of views) {
    const trace = traceIn(task, view, times);
    const rows = figures.rows.filter((figure) => figure.view === view.name);
    const stack = stackRows(view, rows, times, trace ?? { texts: [], lines: [] });
    missing.push(...stack.missing);
    stacks.set(view.name, { ...stack, marks: [...(trace?.marks ?? []), ...stack.marks] });
  }
  const origins = arrange(
    views.map(({ name, box, cutAt }) => {
      const { reach } = stacks.get(name)!;
      const body = {
        left: box.left * times,
        right: box.right * times,
        bottom: box.bottom * times,
        top: box.top * times,
      };
      return { name, body, reach: cutAt === undefined ? reach : { ...reach, top: reach.top + SECTION_TITLE_MM } };
    }),
    options.projection,
    inner,
    taken,
  );
  if (!origins) return undefined;

  const ink = inkOn(form.widthMm, form.heightMm);
  const texts: Box[] = [];
  const obstacles: Box[] = [];
  const bodies: Box[] = [];
  for (const view of views) {
    const origin = origins.get(view.name)!;
    const stack = stacks.get(view.name)!;
    const drawn = drawView(view, origin, times, task.subject.part.id, loosePlaces(view, task.subject));
    for (const mark of drawn) {
      if (mark.is !== 'line' || mark.kind === 'hatching') continue;
      for (let i = 1; i < mark.points.length; i++) ink.draw(mark.points[i - 1]!, mark.points[i]!);
    }
    marks.push(...drawn, ...stack.marks.map((mark) => moveMark(mark, origin)));
    texts.push(...stack.texts.map((box) => moveBox(box, origin)));
    obstacles.push(...stack.lines.map((box) => moveBox(box, origin)));
    bodies.push(boxOnPaper(view, origin, times));
    if (view.cutAt !== undefined) {
      const name = sectionTitle(view, moveBox(stack.reach, origin));
      marks.push(name);
      texts.push(name.box);
    }
  }
  const callouts = placeCallouts(figures.callouts, {
    frame: inner,
    taken,
    texts,
    lines: obstacles,
    views: bodies,
    ink,
    toPaper(name, [x, y]) {
      const [ox, oy] = origins.get(name)!;
      return [ox + times * x, oy + times * y];
    },
  });
  marks.push(...callouts.marks);
  missing.push(...callouts.missing);
  return { form, scale, frame, title, margin, origins, marks, missing };
}

const SECTION_TITLE_MM = 9;

const sectionTitle = ({ name }: ViewPicture, reach: Box) =>
  textMark({
    text: 'A–A',
    at: [(reach.left + reach.right) / 2, reach.top + 2.5],
    heightMm: 5,
    anchor: 'middle',
    bold: true,
    view: name,
  });

/** The trace of the cut in the first view that shows its axis. */
function traceIn({ views, cut, options }: Task, view: ViewPicture, times: number): CuttingLine | undefined {
  if (!cut || !options.section) return undefined;
  const shown = waysAlong(views, cut.axis)[0];
  if (!shown || shown.view !== view) return undefined;
  const sight = shown.sign * cut.sight > 0 ? 1 : -1;
  return cuttingLine(view, shown.way, shown.sign * cut.at, sight, options.section.station, times);
}

const boxOnPaper = ({ box }: ViewPicture, [x, y]: Point, times: number): Box => ({
  left: x + box.left * times,
  right: x + box.right * times,
  bottom: y + box.bottom * times,
  top: y + box.top * times,
});

function moveMark(mark: Mark, by: Point): Mark {
  const move = ([x, y]: Point): Point => [x + by[0], y + by[1]];
  return mark.is === 'text'
    ? { ...mark, at: move(mark.at), box: moveBox(mark.box, by) }
    : { ...mark, points: mark.points.map(move) };
}

/** Marks of one rank lie over all of lower rank. */
const rank = (mark: Mark): number => {
  if (mark.is !== 'line') return mark.is === 'fill' ? 6 : 7;
  switch (mark.kind) {
    case 'hatching':
      return 0;
    case 'hidden':
    case 'phantom':
      return 1;
    case 'centre':
      return 2;
    case 'visible':
      return 3;
    default:
      return 5;
  }
};

function finish(
  { subject, options, views }: Task,
  { form, scale, frame, title, margin, origins, marks }: Draft,
  lines: readonly UnplacedLine[],
): Sheet {
  const styles = new Set(marks.filter(({ is }) => is === 'text').map(({ style }) => style));
  const { left, right, bottom, top } = frame;
  const border: readonly Point[] = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
  const all = [
    lineMark(plainOf(undefined), 'frame', border, true),
    ...clearTexts(marks),
    ...titleBlock(subject, scale, options.projection, title, styles),
    ...(margin && lines.length > 0 ? marginMarks(margin, frame, lines) : []),
  ];
  return {
    part: subject.part.id,
    paper: form.paper,
    widthMm: form.widthMm,
    heightMm: form.heightMm,
    frame,
    projection: options.projection,
    scale,
    views: views.map((view): SheetView => {
      const origin = origins.get(view.name)!;
      return {
        name: view.name,
        title: view.cutAt === undefined ? undefined : 'A–A',
        ...view.frame,
        origin,
        box: boxOnPaper(view, origin, ratio(scale)),
        cutAt: view.cutAt,
      };
    }),
    marks: all
      .map((mark, i) => ({ mark, i }))
      .sort((a, b) => rank(a.mark) - rank(b.mark) || a.i - b.i)
      .map(({ mark }) => mark),
    unplaced: lines,
  };
}
