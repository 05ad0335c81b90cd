import type { Vec3 } from '../solid/placed.ts';
import { type Axle, type CentreLine, centreLines, type PitchCircle } from './centre-lines.ts';
import type { Box, Point, ViewName } from './sheet.ts';
import { indexOfAxis, type ViewFrame } from './view-frame.ts';
import type { ViewLines } from './view-lines.ts';

/** Across the paper or up it. */
export type Way = 'across' | 'up';

/** How plainly a view shows a place: 3 an edge or the centre of a circle, 2 a centre line, 1 a hidden edge, 0 nothing. */
export type Plainness = 0 | 1 | 2 | 3;

/** What a view shows at one place of a way: from where to where across that way, mm of the part. */
export interface Shown {
  readonly plainness: Plainness;
  readonly low: number;
  readonly high: number;
}

/** A view before it has its place on the paper; lengths in mm of the part, to the right and up as the eye sees it. */
export interface ViewPicture {
  readonly name: ViewName;
  readonly frame: ViewFrame;
  readonly lines: ViewLines;
  readonly centres: readonly CentreLine[];
  readonly box: Box;
  readonly cutAt: number | undefined;
  /** What lies at a place along a way. */
  shownAt(way: Way, at: number): Shown;
}

/** Whether something between two points lies wholly before the cut of a view. */
export function isBefore({ towards }: ViewFrame, cutAt: number | undefined, from: Vec3, to: Vec3): boolean {
  if (cutAt === undefined) return false;
  const k = indexOfAxis(towards.axis);
  return Math.min(towards.sign * from[k], towards.sign * to[k]) > towards.sign * cutAt - 1e-6;
}

export function viewPicture(
  name: ViewName,
  frame: ViewFrame,
  lines: ViewLines,
  axles: readonly Axle[],
  circles: readonly PitchCircle[],
  box: Box,
  cutAt: number | undefined,
): ViewPicture {
  // What lies before a cut is gone, its centre lines too.
  const isLeft = (axle: Axle) => !isBefore(frame, cutAt, axle.from, axle.to);
  const centres = centreLines(axles.filter(isLeft), circles, frame);
  // Meshes are in single precision: a place of the drawing and its edge in the mesh differ by so much.
  const near = Math.max(4 * lines.nearMm, 1e-4);
  const known = new Map<string, Shown>();

  return {
    name,
    frame,
    lines,
    centres,
    box,
    cutAt,
    shownAt(way, at) {
      const key = `${way} ${at}`;
      let shown = known.get(key);
      if (!shown) {
        shown = look(way, at);
        known.set(key, shown);
      }
      return shown;
    },
  };

  function look(way: Way, at: number): Shown {
    const along = way === 'across' ? 0 : 1;
    const other = 1 - along;
    let best: Shown = { plainness: 0, low: 0, high: 0 };
    const take = (plainness: Plainness, low: number, high: number) => {
      if (plainness > best.plainness) best = { plainness, low, high };
      else if (plainness === best.plainness) {
        best = { plainness, low: Math.min(best.low, low), high: Math.max(best.high, high) };
      }
    };
    const isHere = (point: Point) => Math.abs(point[along]! - at) <= near;
    for (const { points, closed, isHidden } of lines.lines) {
      for (let i = 0; i < points.length; i++) {
        const point = points[i]!;
        if (!isHere(point)) continue;
        const next = points[i + 1] ?? (closed ? points[0]! : point);
        const reach = isHere(next) ? next[other]! : point[other]!;
        take(isHidden ? 1 : 3, Math.min(point[other]!, reach), Math.max(point[other]!, reach));
      }
    }
    if (best.plainness === 3) return best;
    for (const centre of centres) {
      if (centre.is === 'cross' && isHere(centre.at)) {
        take(3, centre.at[other]! - centre.radius, centre.at[other]! + centre.radius);
      } else if (centre.is === 'axis' && isHere(centre.from) && isHere(centre.to)) {
        take(2, Math.min(centre.from[other]!, centre.to[other]!), Math.max(centre.from[other]!, centre.to[other]!));
      }
    }
    return best;
  }
}
