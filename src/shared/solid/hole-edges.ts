import { axesAcross } from '../build/body-uses.ts';
import { axes } from '../build/station.ts';
import { isClearWay } from './mesh/clear-way.ts';
import type { Patch, Surface } from './mesh/surface.ts';
import { moved } from './moves.ts';
import type { Move, PlacedBody, Turned, Vec3 } from './placed.ts';
import type { HoleEdge } from './solids.ts';
import { areNear, dot, lengthOf, minus, plus } from './vectors.ts';

/** A face runs beside a hole when it is within 5° of parallel to it: pattern draft is less. */
const BESIDE = Math.sin((5 * Math.PI) / 180);
/** Faces further from a hole's axis than this many radii are not looked for. */
const REACH = 3;
/** Places of the mesh are rounded to 24 bits, and this is above it, in mm. */
const TOUCH_MM = 1e-3;

/** Once a face is known, others count when they are nearer by more than this, in mm. */
const GAIN_MM = 1e-4;

/** One straight length of a round hole: where it is, and what is left of its wall. */
interface Bore {
  readonly body: number;
  readonly copy: number;
  readonly axis: Vec3;
  readonly point: Vec3;
  readonly radius: number;
  readonly low: number;
  readonly high: number;
  readonly wall: Patch;
}

/**
 * For each body that bores a round hole: its copy, and the length of it, that comes nearest to a face which runs along beside
 * it; only where that face is nearer to the hole's axis than three radii.
 *
 * The faces are those of the finished part, as the hole has left them. One that stands no further off than the radius has
 * been cut into: the hole breaks out of the part, or into another hollow, sideways.
 */
export function holeEdges<B>(
  surface: Surface,
  bodies: readonly PlacedBody[],
  bodyAt: (index: number) => B,
): readonly HoleEdge<B>[] {
  const nearest = new Map<number, HoleEdge<B>>();
  for (const bore of boresIn(surface, bodies)) {
    const edge = nearestFace(surface, bore);
    if (!edge) continue;
    const before = nearest.get(bore.body);
    const metalMm = edge.centreMm - bore.radius;
    if (before && before.metalMm <= metalMm) continue;
    nearest.set(bore.body, {
      body: bodyAt(bore.body),
      copy: bore.copy,
      beside: bodyAt(edge.body),
      diameterMm: 2 * bore.radius,
      centreMm: edge.centreMm,
      metalMm: metalMm <= TOUCH_MM + edge.sagittaMm ? 0 : metalMm,
      at: edge.at,
    });
  }
  return [...nearest].sort(([a], [b]) => a - b).map(([, edge]) => edge);
}

function* boresIn(surface: Surface, bodies: readonly PlacedBody[]): Generator<Bore> {
  for (const wall of surface.patches) {
    const placed = bodies[wall.body]!;
    const { shape, record, moves } = placed;
    if (record.adds || shape?.is !== 'turned') continue;
    const from = shape.outline[wall.face]!;
    const to = shape.outline[(wall.face + 1) % shape.outline.length]!;
    // An outline runs against the axis where metal is left outside it; the floor of a groove round a wheel is no bore.
    if (from.r !== to.r || from.a < to.a) continue;
    const { axis, point } = lineOf(shape, moves[wall.copy]!);
    let [low, high] = [Infinity, -Infinity];
    for (const facet of surface.facets.slice(wall.from, wall.to)) {
      for (const corner of facet.corners) {
        for (let k = 0; k < 3; k++) {
          const along = dot(minus(cornerAt(surface, corner + k), point), axis);
          low = Math.min(low, along);
          high = Math.max(high, along);
        }
      }
    }
    yield { body: wall.body, copy: wall.copy, axis, point, radius: from.r, low, high, wall };
  }
}

/** The axis of a turned shape after a move. */
function lineOf(shape: Turned, move: Move): { readonly axis: Vec3; readonly point: Vec3 } {
  const place = (a: number): Vec3 => {
    const [u, v] = axesAcross(shape.axis);
    const at: [number, number, number] = [0, 0, 0];
    at[axes.indexOf(shape.axis)] = a;
    at[axes.indexOf(u)] = shape.u;
    at[axes.indexOf(v)] = shape.v;
    return moved(move, at);
  };
  const point = place(0);
  return { axis: minus(place(1), point), point };
}

interface Beside {
  readonly body: number;
  readonly centreMm: number;
  readonly sagittaMm: number;
  readonly at: Vec3;
}

function nearestFace(surface: Surface, { body, copy, axis, point, radius, low, high, wall }: Bore): Beside | undefined {
  let best: Beside | undefined;
  for (const patch of surface.patches) {
    if ((patch.body === body && patch.copy === copy) || !areNear(wall, patch, (REACH - 1) * radius)) continue;
    for (let f = patch.from; f < patch.to; f++) {
      const facet = surface.facets[f]!;
      const slant = dot(facet.normal, axis);
      if (Math.abs(slant) > BESIDE) continue;
      // How far the facet's plane stands off the axis at either end of the hole, outwards positive.
      const off = facet.offset - dot(facet.normal, point);
      const [atLow, atHigh] = [off - slant * low, off - slant * high];
      if (Math.max(atLow, atHigh) <= 0) continue;
      const least = Math.max(0, Math.min(atLow, atHigh)) - patch.sagittaMm;
      if (least > REACH * radius || least >= (best?.centreMm ?? Infinity) - GAIN_MM) continue;
      if (!areNear(wall, facet, (REACH - 1) * radius)) continue;
      for (const corner of facet.corners) {
        const triangle = [0, 1, 2].map((k) => cornerAt(surface, corner + k));
        const near = nearestBeside(triangle, axis, point, low, high);
        if (!near) continue;
        const out = minus(near.at, plus(point, axis, near.along));
        const apart = lengthOf(out);
        const centreMm = Math.max(0, apart - patch.sagittaMm);
        if (dot(facet.normal, out) <= 0 || centreMm > REACH * radius || centreMm >= (best?.centreMm ?? Infinity))
          continue;
        const touches = apart <= radius + TOUCH_MM;
        // Metal all the way from the hole's wall to the face, or the face is not of the wall beside the hole.
        const reach = (share: number) => plus(near.at, out, share - 1);
        if (!touches && !isClearWay(surface, reach((radius + TOUCH_MM) / apart), reach(1 - TOUCH_MM / apart / 10)))
          continue;
        best = { body: patch.body, centreMm, sagittaMm: patch.sagittaMm, at: near.at };
      }
    }
  }
  return best;
}

/** The point of a triangle beside the length `low` to `high` of a line that is nearest to the line. */
function nearestBeside(
  triangle: readonly Vec3[],
  axis: Vec3,
  point: Vec3,
  low: number,
  high: number,
): { readonly at: Vec3; readonly along: number } | undefined {
  const along = (p: Vec3): number => dot(minus(p, point), axis);
  let polygon = triangle;
  for (const inside of [(a: number) => a - low, (a: number) => high - a]) {
    const next: Vec3[] = [];
    polygon.forEach((p, i) => {
      const before = polygon[(i + polygon.length - 1) % polygon.length]!;
      const [here, there] = [inside(along(p)), inside(along(before))];
      if (here >= 0 !== there >= 0) next.push(plus(before, minus(p, before), there / (there - here)));
      if (here >= 0) next.push(p);
    });
    polygon = next;
  }
  if (polygon.length === 0) return undefined;
  const span = polygon.map(along);
  if (Math.max(...span) - Math.min(...span) <= TOUCH_MM) return undefined;
  // Square to the line a face beside it is seen edgewise, so its nearest point lies on its border, or within where the line
  // runs at a slant to it; then a corner of the length is nearer still.
  let best: { at: Vec3; apart: number } | undefined;
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!;
    const flat = (r: Vec3): Vec3 => plus(minus(r, point), axis, -along(r));
    const [a, b] = [flat(p), flat(q)];
    const ab = minus(b, a);
    const length = dot(ab, ab);
    const s = length === 0 ? 0 : Math.min(1, Math.max(0, -dot(a, ab) / length));
    const apart = lengthOf(plus(a, ab, s));
    if (!best || apart < best.apart) best = { at: plus(p, minus(q, p), s), apart };
  });
  return best && { at: best.at, along: along(best.at) };
}

function cornerAt({ vertices, triangles }: Surface, corner: number): Vec3 {
  const i = 3 * triangles[corner]!;
  return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
}
