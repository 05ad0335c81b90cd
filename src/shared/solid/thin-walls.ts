import { isClearWay } from './mesh/clear-way.ts';
import type { FlatPiece, Patch, Surface } from './mesh/surface.ts';
import { necksOf, type WallBetween } from './necks.ts';
import type { Vec3 } from './placed.ts';
import type { ThinWall } from './solids.ts';
import { areNear, dot, plus } from './vectors.ts';

/** Walls thicker than this are not looked for: more than any alloy needs to run in sand. */
const THICKEST_WALL_MM = 6;

/**
 * Two faces bound a wall when their outward normals stand at more than about 127° to one another. Where faces meet at less
 * than 53° the metal runs out to a sharp edge; the sides of a dovetail (55° or 60°) and drafted faces do not.
 */
const FACING = -0.6;

/** Metal thinner than this is an edge without thickness, in mm. */
const SHARP_MM = 1e-3;
/** Once a thin place is known, others of the same two faces count when they are thinner by more than this, in mm. */
const GAIN_MM = 1e-4;
/** Faces that overlap by less than this, seen through the wall, only pass one another, in mm. */
const SLIVER_MM = 1e-3;

/**
 * The walls of a part that are thinner than {@link THICKEST_WALL_MM}: for each two bodies the thinnest place, thinnest first.
 *
 * A wall is measured square to its faces: from every point of a face straight into the metal to the face where it leaves it.
 * Between two flat pieces that distance is a plane over their common outline, so its least stands in a corner of the outline,
 * and the thinnest place is found, not sampled. Between hollows that meet nowhere face to face, it is measured from edge to
 * edge. A hollow round face counts as far outside its facets as it may truly stand, so no wall is told thicker than it is,
 * but for the slant of a facet against the round: less than 0.3 %.
 */
export function thinWalls<B>(surface: Surface, bodyAt: (index: number) => B): readonly ThinWall<B>[] {
  const found = new Map<string, { readonly bodies: readonly [number, number]; readonly wall: WallBetween }>();
  const take = (wall: WallBetween | undefined): void => {
    if (!wall) return;
    const [a, b] = wall.patches.map((patch) => surface.patches[patch]!.body).sort((x, y) => x - y) as [number, number];
    const key = `${a}/${b}/${wall.thicknessMm <= SHARP_MM}`;
    const before = found.get(key);
    if (!before || wall.thicknessMm < before.wall.thicknessMm) found.set(key, { bodies: [a, b], wall });
  };
  for (const [i, j] of nearPatches(surface)) take(wallBetween(surface, i, j));
  for (const neck of necksOf(surface, THICKEST_WALL_MM, FACING)) take(neck);
  return [...found.values()]
    .sort((p, q) => p.wall.thicknessMm - q.wall.thicknessMm || p.bodies[0] - q.bodies[0] || p.bodies[1] - q.bodies[1])
    .map(({ bodies, wall }) => ({
      bodies: [bodyAt(bodies[0]), bodyAt(bodies[1])],
      thicknessMm: wall.thicknessMm <= SHARP_MM ? 0 : wall.thicknessMm,
      at: wall.at,
    }));
}

/** Pairs of faces, a face with itself too, that a wall may lie between as far as their boxes and normals tell. */
function nearPatches({ patches, facets }: Surface): readonly (readonly [number, number])[] {
  const order = patches.map((_, i) => i).sort((a, b) => patches[a]!.min[0] - patches[b]!.min[0]);
  const pairs: (readonly [number, number])[] = [];
  order.forEach((i, place) => {
    const one = patches[i]!;
    for (let k = place; k < order.length; k++) {
      const j = order[k]!;
      const other = patches[j]!;
      if (other.min[0] > one.max[0] + THICKEST_WALL_MM) break;
      if (!areNear(one, other, THICKEST_WALL_MM) || leastCosine(one, other) > FACING) continue;
      if (
        one.to - one.from === 1 &&
        other.to - other.from === 1 &&
        depthOf(facets[one.from]!, other) > THICKEST_WALL_MM
      )
        continue;
      pairs.push(i < j ? [i, j] : [j, i]);
    }
  });
  return pairs;
}

/** No two normals of the patches stand further apart than this cosine. */
function leastCosine(a: Patch, b: Patch): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const [p, q, r, s] = [a.normalMin[k]!, a.normalMax[k]!, b.normalMin[k]!, b.normalMax[k]!];
    sum += Math.min(p * r, p * s, q * r, q * s);
  }
  return sum;
}

/** How deep behind a plane a box begins, in mm; infinite when all of it lies in front. */
function depthOf({ normal, offset }: FlatPiece, { min, max }: { readonly min: Vec3; readonly max: Vec3 }): number {
  let low = -offset;
  let high = -offset;
  for (let k = 0; k < 3; k++) {
    low += normal[k]! * (normal[k]! > 0 ? min[k]! : max[k]!);
    high += normal[k]! * (normal[k]! > 0 ? max[k]! : min[k]!);
  }
  return low < -SHARP_MM ? Math.max(0, -high) : Infinity;
}

/** The thinnest wall between two patches, measured square to either. */
function wallBetween(surface: Surface, i: number, j: number): WallBetween | undefined {
  const { patches, facets } = surface;
  const one = patches[i]!;
  const other = patches[j]!;
  const off = one.sagittaMm + other.sagittaMm;
  let least: Hit = { t: THICKEST_WALL_MM + off, at: [0, 0, 0] };
  let any = false;
  const measure = (f: FlatPiece, g: FlatPiece): void => {
    if (depthOf(f, g) >= least.t - GAIN_MM || !areNear(f, g, least.t)) return;
    const hit = throughWall(surface, f, g, least.t);
    if (!hit) return;
    least = hit;
    any = true;
  };
  for (let f = one.from; f < one.to; f++) {
    for (let g = i === j ? f + 1 : other.from; g < other.to; g++) {
      if (dot(facets[f]!.normal, facets[g]!.normal) > FACING) continue;
      measure(facets[f]!, facets[g]!);
      measure(facets[g]!, facets[f]!);
    }
  }
  return any ? { patches: [i, j], thicknessMm: Math.max(0, least.t - off), at: least.at } : undefined;
}

interface Hit {
  readonly t: number;
  /** The middle of the wall there. */
  readonly at: Vec3;
}

type Flat = readonly [u: number, v: number];

/** The least distance from one flat piece, square to it through metal, to another; undefined when none is under `below`. */
function throughWall(surface: Surface, f: FlatPiece, g: FlatPiece, below: number): Hit | undefined {
  const lean = dot(f.normal, g.normal);
  const parallel = lean < -1 + 1e-12;
  const [eu, ev] = across(f.normal);
  const flat = (piece: FlatPiece, corner: number): readonly Flat[] =>
    [0, 1, 2].map((k) => {
      const point = pointAt(surface, piece.corners[corner]! + k);
      return [dot(point, eu), dot(point, ev)] as const;
    });
  const others = g.corners.map((_, k) => boxed(flat(g, k))).sort((a, b) => a.low[0] - b.low[0]);
  // Seen from outside f its triangles run counter-clockwise, those of g, which looks away, clockwise.
  const depth = ([u, v]: Flat): number => {
    const point = plus(plus(scaled(f.normal, f.offset), eu, u), ev, v);
    return (dot(g.normal, point) - g.offset) / lean;
  };
  let best: Hit | undefined;
  for (let k = 0; k < f.corners.length; k++) {
    const own = boxed(flat(f, k));
    for (const other of others) {
      if (other.low[0] > own.high[0]) break;
      if (other.high[0] < own.low[0] || other.low[1] > own.high[1] || other.high[1] < own.low[1]) continue;
      const common = clip(own.points, [...other.points].reverse());
      if (!isBroad(common)) continue;
      const depths = common.map(depth);
      if (Math.max(...depths) <= SHARP_MM) continue;
      const t = Math.max(0, Math.min(...depths));
      if (t >= (best?.t ?? below)) continue;
      const hit = hitAt(surface, f, eu, ev, common, depths, t);
      if (!hit) continue;
      best = hit;
      if (parallel) return best;
    }
  }
  return best;
}

function hitAt(
  surface: Surface,
  { normal, offset }: FlatPiece,
  eu: Vec3,
  ev: Vec3,
  common: readonly Flat[],
  depths: readonly number[],
  t: number,
): Hit | undefined {
  const thin = common[depths.indexOf(Math.min(...depths))]!;
  const on = ([u, v]: Flat): Vec3 => plus(plus(scaled(normal, offset), eu, u), ev, v);
  const place = on(thin);
  if (t > SHARP_MM) {
    // A little inside the common outline, so that no border is in the way.
    const middle = common.reduce<Flat>(([u, v], p) => [u + p[0] / common.length, v + p[1] / common.length], [0, 0]);
    const inside = on([thin[0] + 0.02 * (middle[0] - thin[0]), thin[1] + 0.02 * (middle[1] - thin[1])]);
    const margin = Math.min(0.01, t / 10);
    if (!isClearWay(surface, plus(inside, normal, -margin), plus(inside, normal, margin - t))) return undefined;
  }
  return { t, at: plus(place, normal, -t / 2) };
}

const scaled = (a: Vec3, s: number): Vec3 => [a[0] * s, a[1] * s, a[2] * s];

function pointAt({ vertices, triangles }: Surface, corner: number): Vec3 {
  const i = 3 * triangles[corner]!;
  return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
}

/** Two directions across a normal that make a right-handed frame with it. */
function across(n: Vec3): readonly [Vec3, Vec3] {
  const small =
    Math.abs(n[0]) < Math.abs(n[1])
      ? Math.abs(n[0]) < Math.abs(n[2])
        ? 0
        : 2
      : Math.abs(n[1]) < Math.abs(n[2])
        ? 1
        : 2;
  const a: Vec3 = [small === 0 ? 1 : 0, small === 1 ? 1 : 0, small === 2 ? 1 : 0];
  const u: Vec3 = [a[1] * n[2] - a[2] * n[1], a[2] * n[0] - a[0] * n[2], a[0] * n[1] - a[1] * n[0]];
  const length = Math.hypot(...u);
  const e: Vec3 = [u[0] / length, u[1] / length, u[2] / length];
  return [e, [n[1] * e[2] - n[2] * e[1], n[2] * e[0] - n[0] * e[2], n[0] * e[1] - n[1] * e[0]]];
}

function boxed(points: readonly Flat[]) {
  const us = points.map(([u]) => u);
  const vs = points.map(([, v]) => v);
  const low: Flat = [Math.min(...us), Math.min(...vs)];
  const high: Flat = [Math.max(...us), Math.max(...vs)];
  return { points, low, high };
}

/** What two triangles have in common; both counter-clockwise. */
function clip(subject: readonly Flat[], by: readonly Flat[]): readonly Flat[] {
  let left = subject;
  for (let k = 0; k < 3 && left.length > 0; k++) {
    const [a, b] = [by[k]!, by[(k + 1) % 3]!];
    const side = ([u, v]: Flat): number => (b[0] - a[0]) * (v - a[1]) - (b[1] - a[1]) * (u - a[0]);
    const next: Flat[] = [];
    left.forEach((point, i) => {
      const before = left[(i + left.length - 1) % left.length]!;
      const [here, there] = [side(point), side(before)];
      if (here >= 0 !== there >= 0) {
        const s = there / (there - here);
        next.push([before[0] + s * (point[0] - before[0]), before[1] + s * (point[1] - before[1])]);
      }
      if (here >= 0) next.push(point);
    });
    left = next;
  }
  return left;
}

function isBroad(points: readonly Flat[]): boolean {
  if (points.length < 3) return false;
  let [area, round] = [0, 0];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    area += (p[0] - points[0]![0]) * (q[1] - points[0]![1]) - (q[0] - points[0]![0]) * (p[1] - points[0]![1]);
    round += Math.hypot(q[0] - p[0], q[1] - p[1]);
  });
  return area / round > SLIVER_MM / 2;
}
