import type { SweptProfile } from '../setup-check.ts';
import { emptyCell, type Sweeper } from './sweeper.ts';

/** A corner of the swept outline: mm along the line, and from it. */
export interface SweptCorner {
  readonly at: number;
  readonly r: number;
}

/** Looked at so near to the ends of a cell, mm, for the radius that it has there. */
const END_MM = 1e-5;

/**
 * The outline of the swept solid for a picture, from end to end along the line: r just behind and just before each edge of the
 * profile, so that steps stand upright and slopes run straight. The bound of the profile itself is what verdicts go by.
 */
export function sweptOutline(sweeper: Sweeper, { edges, most }: SweptProfile): readonly SweptCorner[] {
  const corners: SweptCorner[] = [];
  const cell = emptyCell();
  const put = (at: number, r: number) => {
    const [before, last] = [corners.at(-2), corners.at(-1)];
    if (last && last.at === at && Math.abs(last.r - r) < END_MM) return;
    // Straight on from the one before.
    if (before && last && last.at < at && before.at < last.at) {
      const t = (last.at - before.at) / (at - before.at);
      if (Math.abs(before.r + t * (r - before.r) - last.r) < END_MM) corners.pop();
    }
    corners.push({ at, r });
  };
  for (let i = 0; i < most.length; i++) {
    const [from, to] = [edges[i]!, edges[i + 1]!];
    const width = Math.min(END_MM, (to - from) / 2);
    sweeper.lookWithin(from, from + width, cell);
    put(from, cell.most);
    sweeper.lookWithin(to - width, to, cell);
    put(to, cell.most);
  }
  return corners;
}
