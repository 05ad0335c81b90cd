import type { PictureItem, PictureRole } from './picture.ts';
import type { Point } from './scene.ts';

/** A rectangle by its sides, in either order. */
export const rect = (x0: number, y0: number, x1: number, y1: number): readonly Point[] => {
  const [l, r, b, t] = [Math.min(x0, x1), Math.max(x0, x1), Math.min(y0, y1), Math.max(y0, y1)];
  return [
    [l, b],
    [r, b],
    [r, t],
    [l, t],
  ];
};

export const area = (role: PictureRole, ...loops: readonly (readonly Point[])[]): PictureItem => ({
  is: 'area',
  role,
  loops,
});

export const line = (role: PictureRole, ...points: readonly Point[]): PictureItem => ({
  is: 'line',
  role,
  points,
  closed: false,
});

/** What a rectangle is called, in its middle. */
export const nameIn = (of: PictureRole, text: string, x0: number, y0: number, x1: number, y1: number): PictureItem => ({
  is: 'name',
  of,
  text,
  at: [(x0 + x1) / 2, (y0 + y1) / 2],
  room: [Math.abs(x1 - x0), Math.abs(y1 - y0)],
});

const FACETS = 120;

export const circle = (radius: number, [x, y]: Point = [0, 0]): readonly Point[] =>
  Array.from({ length: FACETS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / FACETS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The box about points, wider by a margin on every side. */
export function boxAbout(points: readonly Point[], margin: number): Box {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  if (left > right) return { left: -50, bottom: -50, right: 50, top: 50 };
  return { left: left - margin, bottom: bottom - margin, right: right + margin, top: top + margin };
}
