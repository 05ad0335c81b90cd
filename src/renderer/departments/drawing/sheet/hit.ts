import type { Box, Mark, Point, Sheet } from '../../../../shared/sheet/sheet.ts';

/**
 * The mark at a place of the paper: a text that covers it, else the nearest line within reach. Of two that are equally near
 * the later one, which lies on top.
 *
 * @param reachMm how far off a line still counts.
 */
export function markAt(sheet: Sheet, at: Point, reachMm: number): Mark | undefined {
  let found: Mark | undefined;
  let nearest = reachMm;
  for (const mark of sheet.marks) {
    if (mark.stands.length === 0) continue;
    const distance = distanceTo(mark, at);
    if (distance <= nearest) {
      nearest = distance;
      found = mark;
    }
  }
  return found;
}

function distanceTo(mark: Mark, at: Point): number {
  switch (mark.is) {
    case 'text':
      return toBox(mark.box, at);
    case 'fill':
      return toLine(mark.points, true, at);
    case 'line':
      // Hatching covers a whole face: whatever is drawn upon it goes first.
      return toLine(mark.points, mark.closed, at) + (mark.kind === 'hatching' ? 0.5 : 0);
  }
}

const toBox = ({ left, right, bottom, top }: Box, [x, y]: Point): number =>
  Math.hypot(Math.max(left - x, 0, x - right), Math.max(bottom - y, 0, y - top));

function toLine(points: readonly Point[], closed: boolean, [x, y]: Point): number {
  let least = Infinity;
  for (let i = closed ? 0 : 1; i < points.length; i++) {
    const [ax, ay] = points[i === 0 ? points.length - 1 : i - 1]!;
    const [bx, by] = points[i]!;
    const [dx, dy] = [bx - ax, by - ay];
    const length = dx * dx + dy * dy;
    const part = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
    least = Math.min(least, Math.hypot(x - ax - part * dx, y - ay - part * dy));
  }
  return least;
}

/** What a press on a mark picks: what it stands for; pressed again, the next of those. */
export function pickOf(mark: Mark | undefined, now: string | undefined): Mark['stands'][number] | undefined {
  if (mark === undefined) return undefined;
  const here = mark.stands.indexOf(now as never);
  return mark.stands[(here + 1) % mark.stands.length];
}
