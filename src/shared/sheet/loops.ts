import { type Intervals, joined } from './intervals.ts';
import type { Point } from './sheet.ts';

/** Closed outlines; what an odd number of them encloses is inside. */
export type Loops = readonly (readonly Point[])[];

/** Whether a point lies inside (even-odd rule; on an outline: either). */
function isInside(loops: Loops, [x, y]: Point): boolean {
  let inside = false;
  for (const loop of loops) {
    let [px, py] = loop.at(-1)!;
    for (const [qx, qy] of loop) {
      if (py > y !== qy > y && x < ((qx - px) * (y - py)) / (qy - py) + px) inside = !inside;
      px = qx;
      py = qy;
    }
  }
  return inside;
}

/** The stretches of the way from `a` to `b` (0 to 1) that lie inside. */
export function insideLoops(loops: Loops, [ax, ay]: Point, [bx, by]: Point): Intervals {
  const dx = bx - ax;
  const dy = by - ay;
  const length = Math.hypot(dx, dy);
  if (length === 0) return isInside(loops, [ax, ay]) ? [0, 1] : [];
  const cuts = [0, 1];
  for (const loop of loops) {
    let [px, py] = loop.at(-1)!;
    for (const [qx, qy] of loop) {
      const h0 = dx * (py - ay) - dy * (px - ax);
      const h1 = dx * (qy - ay) - dy * (qx - ax);
      if (h0 > 0 !== h1 > 0) {
        const s = h0 / (h0 - h1);
        const t = ((px + s * (qx - px) - ax) * dx + (py + s * (qy - py) - ay) * dy) / (length * length);
        if (t > 0 && t < 1) cuts.push(t);
      }
      px = qx;
      py = qy;
    }
  }
  cuts.sort((p, q) => p - q);
  // Each piece between crossings is wholly inside or wholly outside: its middle says which.
  const out: number[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    if (to - from < 1e-12) continue;
    const middle = (from + to) / 2;
    if (isInside(loops, [ax + middle * dx, ay + middle * dy])) out.push(from, to);
  }
  return joined(out, 1e-12);
}
