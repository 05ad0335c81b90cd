import type { FigureStyle, FillMark, LineKind, LineMark, Pick, Point, ViewName } from './sheet.ts';

/** Whose marks are made: the same for a whole group of them. */
export interface MarkOwner {
  readonly view: ViewName | undefined;
  readonly stands: readonly Pick[];
  readonly style: FigureStyle;
}

export const plainOf = (view: ViewName | undefined, ...stands: readonly Pick[]): MarkOwner => ({
  view,
  stands,
  style: 'plain',
});

export const lineMark = (owner: MarkOwner, kind: LineKind, points: readonly Point[], closed = false): LineMark => ({
  is: 'line',
  kind,
  points,
  closed,
  view: owner.view,
  stands: owner.stands,
  style: owner.style,
});

/** Length and half width of an arrowhead, mm: closed and filled, about 20° (ISO 129-1:2018 leaves 15° to 90°). */
export const ARROW_MM = 2.5;
const ARROW_HALF_MM = 0.45;

/** An arrowhead whose tip lies at `tip` and which points along (dx, dy), a unit vector. */
export const arrowMark = (owner: MarkOwner, [x, y]: Point, [dx, dy]: Point): FillMark => ({
  is: 'fill',
  points: [
    [x, y],
    [x - ARROW_MM * dx - ARROW_HALF_MM * dy, y - ARROW_MM * dy + ARROW_HALF_MM * dx],
    [x - ARROW_MM * dx + ARROW_HALF_MM * dy, y - ARROW_MM * dy - ARROW_HALF_MM * dx],
  ],
  view: owner.view,
  stands: owner.stands,
  style: owner.style,
});
