/** A corner of a silhouette, mm; what p and q are, its maker says. */
export interface ViewPoint {
  readonly p: number;
  readonly q: number;
}

/**
 * Closed ways round what is seen, its openings included. Filled by the non-zero rule they cover just what the piece covers; they
 * may cross where faces pass behind one another. Ways that are wholly hidden are left out, of silhouettes that are not very large.
 */
export type Silhouette = readonly (readonly ViewPoint[])[];

/** Silhouettes with more corners than this keep their hidden ways: looking for them takes the square of the number. */
const MOST_CORNERS = 600;
/** To each side of a way, mm. */
const BESIDE = 1e-4;

/**
 * Without the ways that change nothing of what is covered, as those of a bore in a bar seen from the side. What is covered is
 * looked at close to both sides of every stretch of a way; ways that cross others stay.
 */
export function withoutHidden(silhouette: Silhouette): Silhouette {
  if (silhouette.length < 2 || silhouette.reduce((sum, way) => sum + way.length, 0) > MOST_CORNERS) return silhouette;
  const places = silhouette.flatMap((way) => way.flatMap((a, i) => beside(a, way[(i + 1) % way.length]!)));
  const turns = places.map(({ p, q }) => windingAround(silhouette, p, q));
  return silhouette.filter((way) => {
    if (silhouette.some((other) => other !== way && doCross(way, other))) return true;
    const own = places.map(({ p, q }) => windingAround([way], p, q));
    if (own.some((times, i) => turns[i]! > 0 !== turns[i]! - times > 0)) return true;
    own.forEach((times, i) => {
      turns[i]! -= times;
    });
    return false;
  });
}

/** Places to both sides of a straight stretch. */
function beside(a: ViewPoint, b: ViewPoint): readonly ViewPoint[] {
  const [dp, dq] = [b.p - a.p, b.q - a.q];
  const off = BESIDE / Math.hypot(dp, dq);
  return [0.05, 0.5, 0.95].flatMap((t) =>
    [off, -off].map((side) => ({ p: a.p + t * dp - side * dq, q: a.q + t * dq + side * dp })),
  );
}

/** Whether a stretch of one passes through a stretch of the other; touching is not crossing. */
const doCross = (one: readonly ViewPoint[], other: readonly ViewPoint[]): boolean =>
  one.some((a, i) => {
    const b = one[(i + 1) % one.length]!;
    return other.some((c, j) => {
      const d = other[(j + 1) % other.length]!;
      return left(a, b, c) * left(a, b, d) < -SLIGHT && left(c, d, a) * left(c, d, b) < -SLIGHT;
    });
  });

/** mm⁴: products of areas that rounding alone may make. */
const SLIGHT = 1e-9;

const left = (a: ViewPoint, b: ViewPoint, at: ViewPoint): number =>
  (b.p - a.p) * (at.q - a.q) - (b.q - a.q) * (at.p - a.p);

/** How often the ways wind round a point; never less than 0 for those of a silhouette. */
export function windingAround(silhouette: Silhouette, p: number, q: number): number {
  let turns = 0;
  for (const way of silhouette) {
    for (let i = 0; i < way.length; i++) {
      const a = way[i]!;
      const b = way[i + 1 === way.length ? 0 : i + 1]!;
      if (a.q <= q === b.q <= q) continue;
      const side = left(a, b, { p, q });
      if (a.q <= q && side > 0) turns++;
      if (b.q <= q && side < 0) turns--;
    }
  }
  return turns;
}
