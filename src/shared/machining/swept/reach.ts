/**
 * What was found of a piece within a stretch, gathered element by element. Seen from the line: x along it, y and z across.
 */
export interface Found {
  /** Never less than the distance from the line to any point of the piece within the stretch; −1 where there is nothing. */
  most: number;
  /** Distance of the point (x, y, z), which lies on the piece; −1 without one. */
  least: number;
  x: number;
  y: number;
  z: number;
  /** About how far the piece reaches everywhere in the stretch at the least: says where cells should be cut finer. */
  even: number;
  /** Nobody asks for what does not reach beyond this: an element may then leave itself out. */
  floor: number;
}

export const nothingFound = (floor = -1): Found => ({ most: -1, least: -1, x: 0, y: 0, z: 0, even: -1, floor });

/** Begins anew. */
export function clear(found: Found, floor: number): void {
  found.most = -1;
  found.least = -1;
  found.even = -1;
  found.floor = floor;
}

/** Takes in a point that is both the farthest of its element and on the piece. */
export function takeExact(found: Found, r: number, x: number, y: number, z: number): void {
  if (r > found.most) found.most = r;
  takePoint(found, r, x, y, z);
}

/** Takes in a point on the piece. */
export function takePoint(found: Found, r: number, x: number, y: number, z: number): void {
  if (r <= found.least) return;
  found.least = r;
  found.x = x;
  found.y = y;
  found.z = z;
}

export const takeEven = (found: Found, r: number): void => {
  if (r > found.even) found.even = r;
};

/** How far one copy of a shape reaches from the line. Made once, asked for many stretches. */
export interface Reach {
  /** Its two ends along the line. */
  readonly lo: number;
  readonly hi: number;
  /** Places along the line where its outline has corners, any order. */
  readonly breaks: readonly number[];
  /** Looks between `from` and `to` (from < to) alone: what only touches them by less than `SLIVER_MM` does not count. */
  within(from: number, to: number, found: Found): void;
}

/** √(y² + z²); Math.hypot is many times slower. */
export const away = (y: number, z: number): number => Math.sqrt(y * y + z * z);
