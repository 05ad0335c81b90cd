/** A point of a plane, mm. */
export type FlatPoint = readonly [number, number];

/** A closed way of straight sides. */
export type FlatLoop = readonly FlatPoint[];

/**
 * A region of a plane: outer borders counter-clockwise, openings within them clockwise, none crossing another. Empty: nothing.
 */
export type FlatRegion = readonly FlatLoop[];

/** Area within a loop, mm²: negative for an opening. */
export function loopArea(loop: FlatLoop): number {
  const [x0, y0] = loop[0] ?? [0, 0];
  let twice = 0;
  for (let i = 1; i + 1 < loop.length; i++) {
    const [ax, ay] = loop[i]!;
    const [bx, by] = loop[i + 1]!;
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice / 2;
}

/** Area of a region, its openings taken off, mm². */
export const regionArea = (region: FlatRegion): number => region.reduce((sum, loop) => sum + loopArea(loop), 0);

/** Length of a loop all round, mm. */
export const loopLength = (loop: FlatLoop): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length]!;
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);

/** Length of all borders of a region, openings included, mm. */
export const regionLength = (region: FlatRegion): number => region.reduce((sum, loop) => sum + loopLength(loop), 0);

/** An upright rectangle. */
export interface FlatBox {
  readonly min: FlatPoint;
  readonly max: FlatPoint;
}

/** The rectangle that just holds the loops; undefined for nothing. */
export function regionBox(region: FlatRegion): FlatBox | undefined {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const loop of region) {
    for (const [x, y] of loop) {
      x0 = Math.min(x0, x);
      y0 = Math.min(y0, y);
      x1 = Math.max(x1, x);
      y1 = Math.max(y1, y);
    }
  }
  return x0 > x1 ? undefined : { min: [x0, y0], max: [x1, y1] };
}

export const isOpening = (loop: FlatLoop): boolean => loopArea(loop) < 0;

/** Whether a point lies within a region; of points on a border either may be said. */
export function holdsFlatPoint(region: FlatRegion, [x, y]: FlatPoint): boolean {
  let inside = false;
  for (const loop of region) {
    for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
      const [xi, yi] = loop[i]!;
      const [xj, yj] = loop[j]!;
      if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
    }
  }
  return inside;
}
