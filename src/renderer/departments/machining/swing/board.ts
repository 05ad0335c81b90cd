import type { PictureView } from '../../../../shared/machining/picture/picture.ts';
import type { Point } from '../../../../shared/machining/picture/scene.ts';

/** How a view lies on the screen: px per mm, and where a point of it comes to stand. */
export interface Board {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Width of the sheet that it lies on, px. */
  readonly sheet: number;
  at(point: Point): Point;
  /** Place along the view of a px from the left edge of the drawing. */
  along(px: number): number;
}

type Box = PictureView['box'];

export const widthOf = (box: Box): number => box.right - box.left;
export const heightOf = (box: Box): number => box.top - box.bottom;

function boardOf(box: Box, scale: number, left: number, top: number, sheet: number): Board {
  return {
    scale,
    left,
    top,
    width: widthOf(box) * scale,
    height: heightOf(box) * scale,
    sheet,
    at: ([x, y]) => [left + (x - box.left) * scale, top + (box.top - y) * scale],
    along: (px) => box.left + (px - left) / scale,
  };
}

const GAP_PX = 28;

/**
 * Two views on one sheet, at one scale: beside each other with one line of centres, or one over the other with the places
 * along the bed in line; whichever lets them be larger.
 */
export function layOut(first: Box, second: Box, width: number, height: number): readonly [Board, Board] {
  const tall = {
    above: Math.max(first.top, second.top),
    below: Math.max(-first.bottom, -second.bottom),
  };
  const beside = Math.min((width - GAP_PX) / (widthOf(first) + widthOf(second)), height / (tall.above + tall.below));
  const scale = Math.max(1e-6, beside);
  const left = (width - GAP_PX - (widthOf(first) + widthOf(second)) * scale) / 2;
  const line = (height - (tall.above + tall.below) * scale) / 2 + tall.above * scale;
  return [
    boardOf(first, scale, left, line - first.top * scale, width),
    boardOf(second, scale, left + widthOf(first) * scale + GAP_PX, line - second.top * scale, width),
  ];
}

/** One over the other, with the places along the bed in line. */
export function stack(first: Box, second: Box, width: number, height: number): readonly [Board, Board] {
  const left = Math.min(first.left, second.left);
  const right = Math.max(first.right, second.right);
  const scale = Math.max(
    1e-6,
    Math.min(width / (right - left), (height - GAP_PX) / (heightOf(first) + heightOf(second))),
  );
  const x = (width - (right - left) * scale) / 2;
  const y = (height - GAP_PX - (heightOf(first) + heightOf(second)) * scale) / 2;
  return [
    boardOf(first, scale, x + (first.left - left) * scale, y, width),
    boardOf(second, scale, x + (second.left - left) * scale, y + heightOf(first) * scale + GAP_PX, width),
  ];
}

const round = (px: number): string => px.toFixed(1);

/** An SVG path through points. */
export function pathOf(board: Board, points: readonly Point[], closed: boolean): string {
  let path = '';
  for (let i = 0; i < points.length; i++) {
    const [x, y] = board.at(points[i]!);
    path += `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`;
  }
  return closed && path !== '' ? `${path}Z` : path;
}
