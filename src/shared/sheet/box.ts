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

/** Whether the way from `a` to `b` passes through a rectangle. */
export function passesThrough([ax, ay]: Point, [bx, by]: Point, { left, bottom, right, top }: Box): boolean {
  let from = 0;
  let to = 1;
  for (const [start, delta, low, high] of [
    [ax, bx - ax, left, right],
    [ay, by - ay, bottom, top],
  ] as const) {
    if (delta === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const t0 = (low - start) / delta;
    const t1 = (high - start) / delta;
    from = Math.max(from, Math.min(t0, t1));
    to = Math.min(to, Math.max(t0, t1));
  }
  return from < to;
}
