import type { Piece, SweptProfile } from '../setup-check.ts';
import { mostWithin } from './most-within.ts';
import type { Stretch } from './sweep-piece.ts';

/** A corner of the upper outline of a lathe's bed, mm: to the back of the line of centres (front negative), and down from it. */
export interface BedCorner {
  readonly across: number;
  readonly down: number;
}

export interface ClearRadius {
  /** What turns about the line may have this radius and only just touch, mm. */
  readonly radius: number;
  /** Where it touches; undefined without an outline. */
  readonly at: BedCorner | undefined;
}

/**
 * The radius of the greatest circle about the line of centres that does not cut the outline: the distance from the line to the
 * nearest point of it. Beyond its first and last corner the bed falls straight down. An outline that passes over the line
 * leaves nothing.
 */
export function clearRadius(bed: readonly BedCorner[]): ClearRadius {
  let [radius, at]: [number, BedCorner | undefined] = [Infinity, undefined];
  const take = (across: number, down: number) => {
    const away = Math.hypot(across, down);
    if (away < radius) [radius, at] = [away, { across, down }];
  };
  bed.forEach(({ across, down }, i) => {
    // Straight down from an end, the nearest point is level with the line, if the end stands above it.
    const isEnd = i === 0 || i === bed.length - 1;
    take(across, isEnd && down < 0 ? 0 : down);
    const next = bed[i + 1];
    if (!next) return;
    const [u, v] = [next.across - across, next.down - down];
    const length = u * u + v * v;
    const t = length === 0 ? 0 : Math.min(1, Math.max(0, -(across * u + down * v) / length));
    take(across + t * u, down + t * v);
  });
  const over = heightOver(bed);
  return over !== undefined && over <= 0 ? { radius: 0, at: { across: 0, down: 0 } } : { radius, at };
}

/** How far the highest of the outline straight over or under the line lies below it; undefined beside the bed. */
function heightOver(bed: readonly BedCorner[]): number | undefined {
  let least: number | undefined;
  for (let i = 0; i + 1 < bed.length; i++) {
    const [a, b] = [bed[i]!, bed[i + 1]!];
    if (Math.min(a.across, b.across) > 0 || Math.max(a.across, b.across) < 0) continue;
    const down =
      a.across === b.across
        ? Math.min(a.down, b.down)
        : a.down + ((b.down - a.down) * (0 - a.across)) / (b.across - a.across);
    least = Math.min(least ?? Infinity, down);
  }
  return least;
}

export interface ClearProfile {
  /** Radius allowed less the greatest that is there, mm; negative = it hits. */
  readonly margin: number;
  readonly most: number;
  readonly allowed: number;
  /** Where along the line, and where on the bed. */
  readonly at: number;
  readonly bedAt: BedCorner | undefined;
  readonly by: Piece | undefined;
}

/** How far what is swept keeps off the bed within a stretch; undefined where nothing is swept. */
export function clearProfile(
  profile: SweptProfile,
  bed: readonly BedCorner[],
  [from, to]: Stretch = [-Infinity, Infinity],
): ClearProfile | undefined {
  const worst = mostWithin(profile, from, to);
  if (!worst) return undefined;
  const { radius, at: bedAt } = clearRadius(bed);
  return { margin: radius - worst.most, most: worst.most, allowed: radius, at: worst.at, bedAt, by: worst.by };
}
