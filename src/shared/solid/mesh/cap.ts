import type { Point } from '../outline.ts';

/** Twice the area of a triangle, positive when its corners run counter-clockwise. */
const twice = (a: Point, b: Point, c: Point): number => (b.u - a.u) * (c.v - a.v) - (c.u - a.u) * (b.v - a.v);

type Triangle = readonly [number, number, number];

/**
 * Cuts a simple counter-clockwise polygon into triangles of its own corners: n − 2 of them, counter-clockwise, some without
 * area where corners lie on a straight line.
 */
export function capOf(points: readonly Point[]): readonly Triangle[] {
  const count = points.length;
  if (isConvex(points)) return rounds(count);
  const next = points.map((_, i) => (i + 1) % count);
  const before = points.map((_, i) => (i + count - 1) % count);
  const triangles: Triangle[] = [];
  let at = 0;
  let left = count;
  let tried = 0;
  // First only ears with area; when none is left, what remains lies on a line (or crosses itself) and is closed anyhow.
  let strict = true;
  while (left > 3) {
    const a = before[at]!;
    const c = next[at]!;
    if (!strict || isEar(points, next, a, at, c)) {
      triangles.push([a, at, c]);
      next[a] = c;
      before[c] = a;
      left--;
      tried = 0;
      strict = true;
      at = before[a]!;
    } else {
      at = c;
      tried++;
      if (tried > left) strict = false;
    }
  }
  triangles.push([before[at]!, at, next[at]!]);
  return triangles;
}

/**
 * Cuts every second corner off, then every second of those that are left, and so on. The boxes about the triangles hardly
 * overlap, which is what the kernel's search goes by: a fan of slivers costs it many times as much.
 */
export function rounds(count: number): readonly Triangle[] {
  const triangles: Triangle[] = [];
  let left = Array.from({ length: count }, (_, i) => i);
  while (left.length >= 3) {
    const next: number[] = [];
    for (let i = 0; i < left.length; i += 2) {
      next.push(left[i]!);
      const [ear, after] = [left[i + 1], left[i + 2] ?? left[0]!];
      if (ear !== undefined) triangles.push([left[i]!, ear, after]);
    }
    left = next;
  }
  return triangles;
}

function isConvex(points: readonly Point[]): boolean {
  const count = points.length;
  let turned = 0;
  for (let i = 0; i < count; i++) {
    const a = points[i]!;
    const b = points[(i + 1) % count]!;
    const c = points[(i + 2) % count]!;
    const cross = twice(a, b, c);
    // A fan from a corner within a straight side would have triangles without area.
    if (cross <= 0) return false;
    turned += Math.atan2(cross, (b.u - a.u) * (c.u - b.u) + (b.v - a.v) * (c.v - b.v));
  }
  // More than one turn: a star that crosses itself.
  return turned < 3 * Math.PI;
}

/** Whether the corner `b` can be cut off: it turns left, and no other corner lies in the triangle. */
function isEar(points: readonly Point[], next: readonly number[], a: number, b: number, c: number): boolean {
  const pa = points[a]!;
  const pb = points[b]!;
  const pc = points[c]!;
  if (twice(pa, pb, pc) <= 0) return false;
  for (let i = next[c]!; i !== a; i = next[i]!) {
    const p = points[i]!;
    if (twice(pa, pb, p) >= 0 && twice(pb, pc, p) >= 0 && twice(pc, pa, p) >= 0) return false;
  }
  return true;
}
