import type { Box, Point } from './sheet.ts';

export const boxAround = (points: Iterable<Point>): Box | undefined => {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return left > right ? undefined : { left, bottom, right, top };
};

/** Whether two rectangles come nearer than `gap`; sides that touch do not. */
export const overlap = (a: Box, b: Box, gap = 0): boolean =>
  a.left < b.right + gap && b.left < a.right + gap && a.bottom < b.top + gap && b.bottom < a.top + gap;

export const within = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.bottom >= outer.bottom && inner.top <= outer.top;

export const moveBox = ({ left, bottom, right, top }: Box, [dx, dy]: Point): Box => ({
  left: left + dx,
  bottom: bottom + dy,
  right: right + dx,
  top: top + dy,
});

/** From where to where of the way from `a` to `b` (0 to 1) it runs within a rectangle; undefined when it passes by. */
export function stretchIn(
  a: Point,
  b: Point,
  { left, bottom, right, top }: Box,
): readonly [number, number] | undefined {
  const ax = a[0];
  const ay = a[1];
  const dx = b[0] - ax;
  const dy = b[1] - ay;
  // Most ways are nowhere near; asked so often that it is worth saying so at once.
  if (Math.max(ax, ax + dx) <= left || Math.min(ax, ax + dx) >= right) return undefined;
  if (Math.max(ay, ay + dy) <= bottom || Math.min(ay, ay + dy) >= top) return undefined;
  let from = 0;
  let to = 1;
  if (dx !== 0) {
    const t0 = (left - ax) / dx;
    const t1 = (right - ax) / dx;
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  if (dy !== 0) {
    const t0 = (bottom - ay) / dy;
    const t1 = (top - ay) / dy;
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  return from < to ? [from, to] : undefined;
}

/** Whether the way from `a` to `b` passes through a rectangle. */
export const passesThrough = (a: Point, b: Point, box: Box): boolean => stretchIn(a, b, box) !== undefined;
