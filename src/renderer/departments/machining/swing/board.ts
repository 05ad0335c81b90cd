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

const widthOf = (box: Box): number => box.right - box.left;
const heightOf = (box: Box): number => box.top - box.bottom;

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
 * Two views beside each other, at one scale and with one line of centres; where the sheet is tall enough for it without making
 * them smaller, a third under the first, with the places along the bed in line.
 */
export function layOut(
  first: Box,
  second: Box,
  third: Box | undefined,
  width: number,
  height: number,
): readonly [Board, Board, Board | undefined] {
  const above = Math.max(first.top, second.top);
  const below = Math.max(-first.bottom, -second.bottom);
  // The third may reach farther along the bed than the first.
  const over = third === undefined ? 0 : Math.max(0, first.left - third.left);
  const beyond = third === undefined ? 0 : Math.max(0, third.right - first.right);
  const wide = widthOf(first) + widthOf(second);
  const scale = Math.max(1e-6, Math.min((width - GAP_PX) / wide, height / (above + below)));
  const tall = (above + below) * scale;
  const withThird = third !== undefined && tall + GAP_PX + heightOf(third) * scale <= height && over + beyond < 1e-6;
  const all = withThird ? tall + GAP_PX + heightOf(third) * scale : tall;
  const left = (width - GAP_PX - wide * scale) / 2;
  const line = (height - all) / 2 + above * scale;
  return [
    boardOf(first, scale, left, line - first.top * scale, width),
    boardOf(second, scale, left + widthOf(first) * scale + GAP_PX, line - second.top * scale, width),
    withThird
      ? boardOf(third, scale, left + (third.left - first.left) * scale, line + below * scale + GAP_PX, width)
      : undefined,
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
