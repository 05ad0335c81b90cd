import type { DimensionId } from '../base/ids.ts';
import type { Repeat, Shape } from '../build/body.ts';
import { moved } from '../solid/moves.ts';
import { sidesOf } from '../solid/outline.ts';
import type { Extrusion, Move, PlacedBody, Turned, Vec3 } from '../solid/placed.ts';
import { pointOn } from './centre-lines.ts';
import { type Callout, type CalloutLine, type FigureContext, signOf, type Tip } from './figure.ts';
import type { FigureStyle } from './sheet.ts';
import { indexOfAxis, inFrame, viewAlong } from './view-frame.ts';
import { isBefore, type ViewPicture } from './view-picture.ts';

/** Copies whose circles a leader may go to. */
const MOST_TARGETS = 6;
const DIRECTIONS = 16;

/** The words at leaders to a body for those of its sizes that no row shows yet, and where each leader may touch. */
export function calloutsOf(body: PlacedBody, context: FigureContext): readonly Callout[] {
  const callouts: Callout[] = [];
  const add = (lines: readonly CalloutLine[], radius: number | undefined) => {
    const found = lines.length > 0 ? tipsOf(body, radius, context) : undefined;
    if (!found) return;
    for (const { stands } of lines) for (const id of stands) context.shown.add(id);
    callouts.push({ ...found, lines, stands: [...lines.flatMap(({ stands }) => stands), body.record.id] });
  };
  // Each radius of a corner has its own leader, to an arc that has it.
  for (const { id, line } of radiusLines(body, context)) add([line], context.value(id, 'radius'));
  add(linesOf(body, context), undefined);
  return callouts;
}

function radiusLines({ record, shape, moves }: PlacedBody, context: FigureContext) {
  if (shape?.is !== 'extrusion') return [];
  return cornerRadii(record.shape)
    .filter((id) => !context.shown.has(id))
    .map((id) => {
      const radius = context.value(id, 'radius');
      const corners = sidesOf(shape.outline).filter(({ arc }) => arc && Math.abs(arc.radius - radius) < 1e-6).length;
      const count = corners * moves.length;
      const text = context.text(id, signOf(context, id));
      const line: CalloutLine = { text: count > 1 ? { ...text, text: `${count} × ${text.text}` } : text, stands: [id] };
      return { id, line };
    });
}

function linesOf({ record, moves }: PlacedBody, context: FigureContext): readonly CalloutLine[] {
  const { shape, repeats } = record;
  const lines: CalloutLine[] = [];
  const isNew = (id: DimensionId | undefined): id is DimensionId => id !== undefined && !context.shown.has(id);
  const size = (id: DimensionId) => context.text(id, signOf(context, id));
  /** Joins figures and plain words to one line; it is as sure as its least sure figure. */
  const line = (...pieces: readonly (string | DimensionId | undefined)[]) => {
    const stands = pieces.filter((piece): piece is DimensionId => piece?.startsWith('dimension:') === true);
    const texts = stands.map(size);
    const text = pieces
      .flatMap((piece) =>
        piece === undefined ? [] : [stands.includes(piece as DimensionId) ? size(piece as DimensionId).text : piece],
      )
      .join(' ');
    const style: FigureStyle =
      texts.find((one) => one.style === 'assumed')?.style ?? (texts.length === 1 ? texts[0]!.style : 'plain');
    lines.push({ text: { text, style, underlined: texts.length === 1 && texts[0]!.underlined }, stands });
  };
  const times = moves.length > 1 ? `${moves.length} ×` : undefined;
  const counts = repeats.flatMap((repeat) => (repeat.type === 'mirror' ? [] : [repeat.count])).filter(isNew);

  for (const part of headLines(shape, isNew)) line(lines.length === 0 ? times : undefined, ...part);
  for (const repeat of repeats) repeatLine(repeat, isNew, line);
  // A count is said by the number of copies before the first line.
  if (counts.length > 0) {
    const first = lines[0];
    if (first && times !== undefined && first.text.text.startsWith(times))
      lines[0] = { ...first, stands: [...first.stands, ...counts] };
    else
      lines.unshift({
        text: { text: `${times ?? '1 ×'} ${record.name}`, style: 'plain', underlined: false },
        stands: counts,
      });
  }
  return lines;
}

type Piece = string | DimensionId;
type IsNew = (id: DimensionId | undefined) => id is DimensionId;

/** One list of pieces for each line about the body's own sizes. */
function headLines(shape: Shape, isNew: IsNew): readonly (readonly Piece[])[] {
  switch (shape.type) {
    case 'cylinder':
      return [
        ...(isNew(shape.diameter) ? [[shape.diameter]] : []),
        ...(isNew(shape.bore) ? [['bore', shape.bore]] : []),
      ];
    case 'cone':
      return [shape.diameters.filter(isNew)].filter((ids) => ids.length > 0);
    case 'revolved':
      return [...new Set(shape.outline.map(({ diameter }) => diameter))].filter(isNew).map((id) => [id]);
    case 'hole': {
      const { counterbore: bore, countersink: sink, point } = shape;
      return [
        ...(isNew(shape.diameter) ? [[shape.diameter]] : []),
        ...(bore && (isNew(bore.diameter) || isNew(bore.depth))
          ? [['counterbore', bore.diameter, 'deep', bore.depth]]
          : []),
        ...(sink && (isNew(sink.diameter) || isNew(sink.angle))
          ? [['countersink', sink.diameter, '×', sink.angle]]
          : []),
        ...(isNew(point) ? [['point', point]] : []),
      ];
    }
    case 'slot':
      return isNew(shape.width) ? [['width', shape.width]] : [];
    case 'rib':
      return isNew(shape.thickness) ? [['thick', shape.thickness]] : [];
    default:
      return [];
  }
}

function cornerRadii(shape: Shape): readonly DimensionId[] {
  if (shape.type === 'prism') {
    return [...new Set(shape.corners.flatMap(({ radius }) => (radius === undefined ? [] : [radius])))];
  }
  if (shape.type === 'pocket') return shape.radius === undefined ? [] : [shape.radius];
  return shape.type === 'fillet' ? [shape.radius] : [];
}

function repeatLine(repeat: Repeat, isNew: IsNew, line: (...pieces: readonly (Piece | undefined)[]) => void): void {
  if (repeat.type === 'row' && isNew(repeat.pitch)) line('pitch', repeat.pitch, `along ${repeat.axis}`);
  if (repeat.type !== 'circle') return;
  const circle = isNew(repeat.circle) ? repeat.circle : undefined;
  const start = isNew(repeat.start) ? repeat.start : undefined;
  if (circle !== undefined) line('on', circle, ...(start === undefined ? [] : ['from', start]));
  else if (start !== undefined) line('from', start);
}

/** Where arrows may touch: round the circles of the copies seen along their axis, on arcs of an outline, or at the middle. */
function tipsOf({ record, shape, moves }: PlacedBody, radius: number | undefined, { views }: FigureContext) {
  if (!shape) return undefined;
  const axis = shape.is === 'mesh' ? 'Z' : shape.axis;
  for (const view of views) {
    if (view.name !== viewAlong(axis)) continue;
    const ends = shape.is === 'mesh' ? undefined : endsOf(shape);
    const tips = moves
      .filter((move) => keepsAxis(move, indexOfAxis(axis)))
      .filter((move) => {
        const [from, to] = (ends ?? [0, 0]).map((a) => moved(move, pointOn(axis, a, 0, 0))) as [Vec3, Vec3];
        return !isBefore(view.frame, view.cutAt, from, to);
      })
      .slice(0, MOST_TARGETS)
      .flatMap((move) => {
        const point = (u: number, v: number, a = 0) => inFrame(view.frame, moved(move, pointOn(axis, a, u, v)));
        if (shape.is === 'turned')
          return roundTips(point(shape.u, shape.v), calloutRadius(shape.outline, record.shape));
        return shape.is === 'extrusion' ? arcTips(shape, radius, point) : [];
      });
    if (tips.length > 0) return { view: view.name, tips };
  }
  return fallback(shape.is === 'mesh' ? undefined : shape, moves[0], views);
}

/** The radius at which a leader touches: the narrowest wall of a hole, the widest of anything else. */
function calloutRadius(outline: readonly { readonly r: number }[], shape: Shape): number {
  const radii = outline.map(({ r }) => r).filter((r) => r > 0);
  const isNarrow = shape.type === 'hole' || (shape.type === 'cylinder' && shape.bore !== undefined);
  return isNarrow ? Math.min(...radii) : Math.max(...radii);
}

const keepsAxis = (move: Move, index: 0 | 1 | 2): boolean => Math.abs(Math.abs(move[5 * index]!) - 1) < 1e-9;

const roundTips = ([x, y]: Vec3, radius: number): readonly Tip[] =>
  Array.from({ length: DIRECTIONS }, (_, i): Tip => {
    const angle = ((2 * i + 1) * Math.PI) / DIRECTIONS;
    const out = [Math.cos(angle), Math.sin(angle)] as const;
    return { at: [x + radius * out[0], y + radius * out[1]], out };
  });

function arcTips(
  { outline }: Extrusion,
  radius: number | undefined,
  point: (u: number, v: number) => Vec3,
): readonly Tip[] {
  return sidesOf(outline).flatMap(({ arc }) => {
    if (!arc || (radius !== undefined && Math.abs(arc.radius - radius) > 1e-6)) return [];
    const [cx, cy] = point(arc.centre.u, arc.centre.v);
    return [0.5, 0.3, 0.7].flatMap((part): readonly Tip[] => {
      const angle = arc.start + part * arc.sweep;
      const u = arc.centre.u + arc.radius * Math.cos(angle);
      const v = arc.centre.v + arc.radius * Math.sin(angle);
      const [x, y] = point(u, v);
      const out = [(x - cx) / arc.radius, (y - cy) / arc.radius] as const;
      return [
        { at: [x, y], out },
        { at: [x, y], out: [-out[0], -out[1]] },
      ];
    });
  });
}

/** Where a shape begins and ends along its axis. */
function endsOf(shape: Extrusion | Turned): readonly [number, number] {
  if (shape.is === 'extrusion') return [shape.a0, shape.a1];
  const places = shape.outline.map(({ a }) => a);
  return [Math.min(...places), Math.max(...places)];
}

/** The middle of the body in the first view: better a leader to it than a size that the sheet does not show. */
function fallback(
  shape: Exclude<PlacedBody['shape'], { readonly is: 'mesh' } | undefined> | undefined,
  move: Move | undefined,
  views: readonly ViewPicture[],
) {
  // A view that is no section has all of the part.
  const view = views.find(({ cutAt }) => cutAt === undefined);
  if (!shape || !move || !view) return undefined;
  const [from, to] = endsOf(shape);
  const a = (from + to) / 2;
  const outline = shape.is === 'turned' ? [{ u: shape.u, v: shape.v }] : shape.outline;
  const mean = (pick: (corner: { u: number; v: number }) => number) =>
    outline.reduce((sum, corner) => sum + pick(corner), 0) / outline.length;
  const at = inFrame(
    view.frame,
    moved(
      move,
      pointOn(
        shape.axis,
        a,
        mean(({ u }) => u),
        mean(({ v }) => v),
      ),
    ),
  );
  return { view: view.name, tips: roundTips(at, 0) };
}
