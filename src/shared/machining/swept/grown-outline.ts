import { arcOf, SAME_MM } from '../../solid/outline.ts';
import type { OutlineCorner } from '../../solid/placed.ts';

/** A sharp corner is drawn out to where its sides meet, but no farther than this many times the growth: 60° and wider are whole. */
const LONGEST_CORNER = 2;
/** Cosine of the turn at a corner of 15°: sharper ones, as the ends of a fillet are, end square at the growth itself. */
const NEEDLE = -Math.cos(Math.PI / 12);

interface Grown {
  readonly from: OutlineCorner;
  readonly to: OutlineCorner;
  /** Outwards, of length 1, at both ends; and the way on along the side there. */
  readonly outFrom: Way;
  readonly outTo: Way;
  readonly growth: number;
  readonly bulge: number;
  readonly length: number;
}

interface Way {
  readonly u: number;
  readonly v: number;
}

/**
 * A counter-clockwise outline with every side moved outwards: a straight one by its growth, an arc made wider by it (a hollow one narrower). Corners
 * that stand out keep their sharpness, cut square at twice the growth where they are sharper than 60°. In hollow corners the sides meet where they are long
 * enough; else they run into the solid, and the outline crosses itself within it. What lies no farther than the growth from the outline
 * lies within the new one.
 *
 * @param growthOf mm for side i, which leaves corner i; 0 = stays
 */
export function growOutline(
  outline: readonly OutlineCorner[],
  growthOf: (side: number) => number,
): readonly OutlineCorner[] {
  const sides = outline.map((from, i): Grown => sideOf(from, outline[(i + 1) % outline.length]!, growthOf(i)));
  const grown: OutlineCorner[] = [];
  sides.forEach((side, i) => {
    const join = joinOf(sides[(i + sides.length - 1) % sides.length]!, side);
    join.forEach(({ u, v }, k) => {
      if (grown.length > 0 && isSame(grown.at(-1)!, { u, v })) grown.pop();
      grown.push({ u, v, bulge: k === join.length - 1 ? side.bulge : 0 });
    });
  });
  if (grown.length > 1 && isSame(grown.at(-1)!, grown[0]!)) grown.pop();
  return grown;
}

/** Whether nothing would be missed of the way from one corner to the next. */
const isSame = (corner: OutlineCorner, next: Way): boolean =>
  corner.bulge === 0 && Math.hypot(corner.u - next.u, corner.v - next.v) <= SAME_MM;

function sideOf(from: OutlineCorner, to: OutlineCorner, growth: number): Grown {
  const length = Math.hypot(to.u - from.u, to.v - from.v);
  if (from.bulge === 0) {
    const out = { u: (to.v - from.v) / length, v: -(to.u - from.u) / length };
    return { from, to, outFrom: out, outTo: out, growth, bulge: 0, length };
  }
  const { centre, radius } = arcOf(from, to, from.bulge);
  const hand = Math.sign(from.bulge);
  const outAt = (p: OutlineCorner) => ({
    u: (hand * (p.u - centre.u)) / radius,
    v: (hand * (p.v - centre.v)) / radius,
  });
  // A hollow arc narrower than the growth is filled up.
  const bulge = radius + hand * growth > SAME_MM ? from.bulge : 0;
  return { from, to, outFrom: outAt(from), outTo: outAt(to), growth, bulge, length };
}

/** What stands between the grown end of one side and the grown beginning of the next: the corners, in order, at least one. */
function joinOf(before: Grown, side: Grown): readonly Way[] {
  const { u, v } = side.from;
  const [n, m] = [before.outTo, side.outFrom];
  const [g, h] = [before.growth, side.growth];
  const end = { u: u + n.u * g, v: v + n.v * g };
  const start = { u: u + m.u * h, v: v + m.v * h };
  const turn = n.u * m.v - n.v * m.u;
  const along = n.u * m.u + n.v * m.v;
  if (Math.abs(turn) < 1e-9 && along > 0) return Math.abs(g - h) <= SAME_MM ? [start] : [end, start];
  const limit = (along < NEEDLE ? 1 : LONGEST_CORNER) * Math.max(g, h);
  // Where the two grown sides meet, seen from the corner: n · p = g and m · p = h.
  const p = { u: (g * m.v - h * n.v) / turn, v: (h * n.u - g * m.u) / turn };
  if (turn < 0 && Math.abs(turn) >= 1e-9) {
    const back = -(p.u * -n.v + p.v * n.u);
    const on = p.u * -m.v + p.v * m.u;
    const straight = before.from.bulge === 0 && side.from.bulge === 0;
    const fits = straight && back <= before.length / 2 && on <= side.length / 2;
    return fits ? [{ u: u + p.u, v: v + p.v }] : [end, { u, v }, start];
  }
  const far = Math.hypot(p.u, p.v);
  if (turn >= 1e-9 && far <= limit) return far === 0 ? [start] : [end, { u: u + p.u, v: v + p.v }, start];
  return [end, ...squareCut(u, v, n, g, m, h, limit), start];
}

/** A corner too sharp to be drawn out, cut off square to its middle at `limit` from it. */
function squareCut(u: number, v: number, n: Way, g: number, m: Way, h: number, limit: number): readonly Way[] {
  // The middle points on along the side that comes and back along the one that goes; with a growth of nothing, along that side.
  const onward = { u: -n.v, v: n.u };
  const backward = { u: m.v, v: -m.u };
  const middle = g === 0 ? onward : h === 0 ? backward : { u: onward.u + backward.u, v: onward.v + backward.v };
  const size = Math.hypot(middle.u, middle.v);
  const b = { u: middle.u / size, v: middle.v / size };
  // A point of each grown side at b · p = limit: out · growth + way · t.
  const on = (out: Way, growth: number, way: Way): Way => {
    const t = (limit - growth * (out.u * b.u + out.v * b.v)) / (way.u * b.u + way.v * b.v);
    return { u: u + out.u * growth + way.u * t, v: v + out.v * growth + way.v * t };
  };
  return [on(n, g, onward), on(m, h, backward)];
}
