import {
  type FlatLoop,
  type FlatPoint,
  type FlatRegion,
  isOpening,
  loopArea,
  loopLength,
  regionArea,
} from '../solid/flat-region.ts';

/** Points along a loop at which the wire stands on both templates at once, where their corners do not answer to one another. */
const MARKS = 240;

/** Loops of the lower and the upper template that one pass of a straight wire follows together. */
export interface RuledPair {
  readonly lower: FlatLoop;
  readonly upper: FlatLoop;
}

/**
 * Pairs the loops of two templates, so that a straight wire led along both at once cuts what lies between. Borders go with
 * borders and openings with openings, the nearest with the nearest.
 *
 * @returns points of both that belong together, one for one; undefined where one template has loops that the other has not.
 */
export function pairLoops(lower: FlatRegion, upper: FlatRegion): readonly RuledPair[] | undefined {
  if (lower.length !== upper.length || lower.length === 0) return undefined;
  const left = [...upper];
  const pairs: RuledPair[] = [];
  for (const loop of lower) {
    const alike = left.filter((other) => isOpening(other) === isOpening(loop));
    const [first] = alike;
    if (!first) return undefined;
    const from = middleOf(loop);
    const nearest = alike.reduce(
      (best, other) => (apart(middleOf(other), from) < apart(middleOf(best), from) ? other : best),
      first,
    );
    left.splice(left.indexOf(nearest), 1);
    pairs.push(together(loop, nearest));
  }
  return pairs;
}

const apart = ([ax, ay]: FlatPoint, [bx, by]: FlatPoint): number => Math.hypot(ax - bx, ay - by);

function middleOf(loop: FlatLoop): FlatPoint {
  let [x, y] = [0, 0];
  for (const [px, py] of loop) {
    x += px;
    y += py;
  }
  return [x / loop.length, y / loop.length];
}

/** Corner to corner where there are as many; else at equal shares of the way round. */
function together(lower: FlatLoop, upper: FlatLoop): RuledPair {
  const same = lower.length === upper.length;
  const [a, b] = same ? [lower, upper] : [evenly(lower, MARKS), evenly(upper, MARKS)];
  let best = 0;
  let least = Infinity;
  for (let shift = 0; shift < b.length; shift++) {
    let sum = 0;
    for (let i = 0; i < a.length && sum < least; i++) {
      const [ax, ay] = a[i]!;
      const [bx, by] = b[(i + shift) % b.length]!;
      sum += (ax - bx) ** 2 + (ay - by) ** 2;
    }
    if (sum < least) {
      least = sum;
      best = shift;
    }
  }
  return { lower: a, upper: a.map((_, i) => b[(i + best) % b.length]!) };
}

/** Points at equal steps along a loop. */
function evenly(loop: FlatLoop, count: number): FlatLoop {
  const step = loopLength(loop) / count;
  const points: FlatPoint[] = [];
  let walked = 0;
  for (let i = 0; i < loop.length && points.length < count; i++) {
    const [x, y] = loop[i]!;
    const [nextX, nextY] = loop[(i + 1) % loop.length]!;
    const length = Math.hypot(nextX - x, nextY - y);
    while (points.length < count && points.length * step <= walked + length) {
      const share = length === 0 ? 0 : (points.length * step - walked) / length;
      points.push([x + share * (nextX - x), y + share * (nextY - y)]);
    }
    walked += length;
  }
  return points;
}

/**
 * Volume between two templates that a straight wire leaves, mm³: by the prismoid rule, which is exact, as sections of a ruled
 * body between corresponding points are of the second degree in height.
 */
export function ruledVolume(
  pairs: readonly RuledPair[],
  lower: FlatRegion,
  upper: FlatRegion,
  heightMm: number,
): number {
  const middle = pairs.reduce(
    (sum, pair) =>
      sum +
      loopArea(pair.lower.map(([x, y], i): FlatPoint => [(x + pair.upper[i]![0]) / 2, (y + pair.upper[i]![1]) / 2])),
    0,
  );
  return (heightMm / 6) * (regionArea(lower) + 4 * middle + regionArea(upper));
}
