import { boxAround } from './box.ts';
import { insideLoops, type Loops } from './loops.ts';
import type { Point } from './sheet.ts';

/** Distance between hatching lines, mm of paper. */
const PITCH_MM = 3;

/**
 * Hatching of a cut: thin lines at 45° (ISO 128-3:2020, hatching of cuts and sections; angle and even distances).
 * @param loops outlines on the paper.
 */
export function hatching(loops: Loops): readonly (readonly [Point, Point])[] {
  const box = boxAround(loops.flat());
  if (!box) return [];
  const lines: (readonly [Point, Point])[] = [];
  const step = PITCH_MM * Math.SQRT2;
  const height = box.top - box.bottom;
  // Lines y = x + c: those that pass the box, at whole steps so that all fields of a cut are hatched alike.
  const last = Math.floor((box.top - box.left) / step);
  for (let n = Math.ceil((box.bottom - box.right) / step); n <= last; n++) {
    const c = n * step;
    const start: Point = [box.bottom - c, box.bottom];
    const end: Point = [box.bottom - c + height, box.top];
    const inside = insideLoops(loops, start, end);
    for (let i = 0; i < inside.length; i += 2) {
      const [from, to] = [inside[i]!, inside[i + 1]!];
      lines.push([
        [start[0] + from * height, start[1] + from * height],
        [start[0] + to * height, start[1] + to * height],
      ]);
    }
  }
  return lines;
}
