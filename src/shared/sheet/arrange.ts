import { moveBox, overlap } from './box.ts';
import type { Box, Point, Projection, ViewName } from './sheet.ts';

/** A view with its rows: what the part covers and what all of it covers, mm of paper from its own zero. */
export interface Extent {
  readonly name: ViewName;
  readonly body: Box;
  readonly reach: Box;
}

/** Least distance between what belongs to different views, mm. */
const BETWEEN_MM = 6;
/** Parts of the spare room between the views, and before them; the first that keep clear of the title are taken. */
const BETWEEN = [0.4, 0.2, 0.7, 0];
const BEFORE = [0.5, 0.25, 0.75, 0, 1];

/**
 * Places front, side and top view in line with one another (ISO 5456-2:1996): the side view right of the front view, the
 * top view below it in first angle and above it in third.
 * @returns where zero of each view lies on the paper; undefined when they do not fit into the frame clear of what is taken.
 */
export function arrange(
  views: readonly Extent[],
  projection: Projection,
  frame: Box,
  taken: readonly Box[],
): ReadonlyMap<ViewName, Point> | undefined {
  const [front, side, top] = (['front', 'side', 'top'] as const).map(
    (name) => views.find((view) => view.name === name)!,
  );
  const margin = (list: readonly (Extent | undefined)[], of: (extent: Extent) => number) =>
    Math.max(0, ...list.map((one) => (one ? of(one) : 0)));
  const left = ({ body, reach }: Extent) => body.left - reach.left;
  const right = ({ body, reach }: Extent) => reach.right - body.right;
  const below = ({ body, reach }: Extent) => body.bottom - reach.bottom;
  const above = ({ body, reach }: Extent) => reach.top - body.top;
  const width = ({ body }: Extent) => body.right - body.left;
  const height = ({ body }: Extent) => body.top - body.bottom;

  const columns = [
    { before: margin([front, top], left), size: width(front!), after: margin([front, top], right) },
    { before: margin([side], left), size: width(side!), after: margin([side], right) },
  ];
  const elevations = {
    before: margin([front, side], below),
    size: height(front!),
    after: margin([front, side], above),
  };
  const plan = { before: margin([top], below), size: height(top!), after: margin([top], above) };
  // From the bottom of the sheet upwards.
  const rows = projection === 'first' ? [plan, elevations] : [elevations, plan];
  const spareX = frame.right - frame.left - total(columns);
  const spareY = frame.top - frame.bottom - total(rows);
  if (spareX < 0 || spareY < 0) return undefined;

  const choices = BETWEEN.flatMap((between) => BEFORE.map((before) => ({ between, before })));
  const ends = (spare: number, { between, before }: { between: number; before: number }) => {
    const gap = Math.min(between * spare, 50);
    return { gap: BETWEEN_MM + gap, start: (spare - gap) * before };
  };
  for (const choiceY of choices) {
    for (const choiceX of choices) {
      const x = ends(spareX, choiceX);
      const y = ends(spareY, choiceY);
      const firstX = frame.left + x.start + columns[0]!.before;
      const secondX = firstX + columns[0]!.size + columns[0]!.after + x.gap + columns[1]!.before;
      const firstY = frame.bottom + y.start + rows[0]!.before;
      const secondY = firstY + rows[0]!.size + rows[0]!.after + y.gap + rows[1]!.before;
      const [planY, elevationY] = projection === 'first' ? [firstY, secondY] : [secondY, firstY];
      const origins = new Map<ViewName, Point>([
        ['front', [firstX - front!.body.left, elevationY - front!.body.bottom]],
        ['side', [secondX - side!.body.left, elevationY - side!.body.bottom]],
        ['top', [firstX - top!.body.left, planY - top!.body.bottom]],
      ]);
      const isClear = views.every(({ name, reach }) => {
        const box = moveBox(reach, origins.get(name)!);
        return taken.every((other) => !overlap(box, other, 2));
      });
      if (isClear) return origins;
    }
  }
  return undefined;
}

const total = (strips: readonly { before: number; size: number; after: number }[]): number =>
  strips.reduce((sum, { before, size, after }) => sum + before + size + after, BETWEEN_MM);
