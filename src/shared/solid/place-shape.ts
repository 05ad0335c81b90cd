import { unreachable } from '../base/assert.ts';
import type { DimensionId, StationId } from '../base/ids.ts';
import { ok } from '../base/result.ts';
import type { Shape } from '../build/body.ts';
import type { Axis } from '../build/station.ts';
import { type Point, polygonArea, type Rounded, roundCorners, SAME_MM } from './outline.ts';
import { findCrossing } from './outline-crossing.ts';
import { placeHole } from './place-hole.ts';
import { placeMesh } from './place-mesh.ts';
import { noSize, type Placed, shapeProblem } from './place-problem.ts';
import { placeCone, placeCylinder, placeRevolved } from './place-turned.ts';
import type { ExactShape, OutlineCorner } from './placed.ts';
import { type Across, type Places, pointAt } from './places.ts';

type Ends = readonly [StationId, StationId];

/** The exact form of a body whose places and sizes are known, or what is wrong with it. */
export function placeShape(shape: Shape, places: Places): Placed<ExactShape> {
  switch (shape.type) {
    case 'block':
      return drawnOut('Z', shape.z, places, () => rectangle(shape.x, shape.y, undefined, places));
    case 'cylinder':
      return placeCylinder(shape, places);
    case 'cone':
      return placeCone(shape, places);
    case 'prism':
      return drawnOut(shape.axis, shape.ends, places, () => polygon(shape.corners, places));
    case 'revolved':
      return placeRevolved(shape, places);
    case 'hole':
      return placeHole(shape, places);
    case 'slot':
      return drawnOut(shape.axis, shape.ends, places, () => capsule(shape.centres, shape.width, places));
    case 'pocket':
      return drawnOut(shape.axis, shape.ends, places, () =>
        rectangle([shape.from[0], shape.to[0]], [shape.from[1], shape.to[1]], shape.radius, places),
      );
    case 'rib':
      return placeRib(shape, places);
    case 'fillet':
      return drawnOut(shape.axis, shape.ends, places, () => cornerFill(shape, places));
    case 'imported':
      return placeMesh(shape, places);
    default:
      return unreachable(shape);
  }
}

function drawnOut(
  axis: Axis,
  [from, to]: Ends,
  places: Places,
  draw: () => Placed<readonly OutlineCorner[]>,
): Placed<ExactShape> {
  const [a, b] = [places.at(from), places.at(to)];
  if (Math.abs(a - b) <= SAME_MM) return noSize(from, to);
  const outline = draw();
  if (!outline.ok) return outline;
  return ok({ is: 'extrusion', axis, a0: Math.min(a, b), a1: Math.max(a, b), outline: outline.value });
}

function rectangle(
  [u0, u1]: Ends,
  [v0, v1]: Ends,
  radiusId: DimensionId | undefined,
  places: Places,
): Placed<readonly OutlineCorner[]> {
  const [ua, ub, va, vb] = [places.at(u0), places.at(u1), places.at(v0), places.at(v1)];
  if (Math.abs(ua - ub) <= SAME_MM) return noSize(u0, u1);
  if (Math.abs(va - vb) <= SAME_MM) return noSize(v0, v1);
  const radius = radiusId === undefined ? 0 : places.size(radiusId, 'radius');
  if (radiusId !== undefined && radius <= SAME_MM) return noSize(radiusId);
  const corners = [
    { u: Math.min(ua, ub), v: Math.min(va, vb), radius },
    { u: Math.max(ua, ub), v: Math.min(va, vb), radius },
    { u: Math.max(ua, ub), v: Math.max(va, vb), radius },
    { u: Math.min(ua, ub), v: Math.max(va, vb), radius },
  ];
  const rounded = roundCorners(corners);
  return 'outline' in rounded ? ok(rounded.outline) : shapeProblem('radius-too-large', radiusId);
}

interface Corner {
  readonly at: Across;
  readonly radius?: DimensionId | undefined;
}

function polygon(corners: readonly Corner[], places: Places): Placed<readonly OutlineCorner[]> {
  const rounded: Rounded[] = [];
  for (const { at, radius: id } of corners) {
    const radius = id === undefined ? 0 : places.size(id, 'radius');
    if (id !== undefined && radius <= SAME_MM) return noSize(id);
    rounded.push({ ...pointAt(at, places), radius });
  }
  // Crossing comes first: where sides cross, neither area nor roundings mean anything.
  const sharp = findCrossing(rounded.map(({ u, v }) => ({ u, v, bulge: 0 })));
  const result = roundCorners(rounded);
  if (!('outline' in result) && result.why === 'zero') {
    return noSize(...result.at.flatMap((i) => corners[i]!.at));
  }
  if (sharp) {
    const all = corners.every((_, i) => onOneLine(rounded, i));
    const ends = sharp.flatMap((side) => [corners[side]!, corners[(side + 1) % corners.length]!]);
    const at = ends.flatMap((corner) => corner.at);
    return all ? noSize(...at) : shapeProblem('outline-crosses', ...at);
  }
  if (!('outline' in result)) {
    const guilty = result.at.map((i) => corners[i]!);
    return shapeProblem(
      'radius-too-large',
      ...guilty.map((corner) => corner.radius),
      ...guilty.flatMap((corner) => corner.at),
    );
  }
  if (Math.abs(polygonArea(rounded)) <= SAME_MM * SAME_MM) return noSize(...corners.flatMap((corner) => corner.at));
  if (findCrossing(result.outline)) {
    return shapeProblem('outline-crosses', ...corners.flatMap((corner) => [corner.radius, ...corner.at]));
  }
  return ok(result.outline);
}

function onOneLine(points: readonly Point[], i: number): boolean {
  const [a, b] = [points[i]!, points[(i + 1) % points.length]!];
  const length = Math.hypot(b.u - a.u, b.v - a.v);
  return points.every(
    (point) => Math.abs((b.u - a.u) * (point.v - a.v) - (b.v - a.v) * (point.u - a.u)) <= SAME_MM * length,
  );
}

function placeRib(rib: Extract<Shape, { type: 'rib' }>, places: Places): Placed<ExactShape> {
  const thickness = places.size(rib.thickness, 'length');
  if (thickness <= SAME_MM) return noSize(rib.thickness);
  const outline = polygon(
    rib.corners.map((at) => ({ at })),
    places,
  );
  if (!outline.ok) return outline;
  const at = places.at(rib.at);
  return ok({
    is: 'extrusion',
    axis: rib.axis,
    a0: at - thickness / 2,
    a1: at + thickness / 2,
    outline: outline.value,
  });
}

function capsule(
  centres: readonly [Across, Across],
  widthId: DimensionId,
  places: Places,
): Placed<readonly OutlineCorner[]> {
  const radius = places.size(widthId, 'width') / 2;
  if (radius <= SAME_MM) return noSize(widthId);
  const [from, to] = [pointAt(centres[0], places), pointAt(centres[1], places)];
  const length = Math.hypot(to.u - from.u, to.v - from.v);
  if (length <= SAME_MM) return noSize(...centres.flat());
  // To the left of the way from one centre to the other.
  const side = { u: (-(to.v - from.v) * radius) / length, v: ((to.u - from.u) * radius) / length };
  return ok([
    { u: from.u - side.u, v: from.v - side.v, bulge: 0 },
    { u: to.u - side.u, v: to.v - side.v, bulge: 1 },
    { u: to.u + side.u, v: to.v + side.v, bulge: 0 },
    { u: from.u + side.u, v: from.v + side.v, bulge: 1 },
  ]);
}

/** What lies between a corner and the arc that touches both of its sides. */
function cornerFill(
  { corner, radius: id, quadrant: [su, sv] }: Extract<Shape, { type: 'fillet' }>,
  places: Places,
): Placed<readonly OutlineCorner[]> {
  const radius = places.size(id, 'radius');
  if (radius <= SAME_MM) return noSize(id);
  const { u, v } = pointAt(corner, places);
  const alongU = { u: u + su * radius, v };
  const alongV = { u, v: v + sv * radius };
  const [first, second] = su * sv > 0 ? [alongU, alongV] : [alongV, alongU];
  // A quarter turn to the right: it bows towards the corner.
  return ok([
    { u, v, bulge: 0 },
    { ...first, bulge: -Math.tan(Math.PI / 8) },
    { ...second, bulge: 0 },
  ]);
}
