import type { Axis } from '../build/station.ts';
import { frameOf, meshDraft } from '../solid/mesh/body-mesh.ts';
import { capOf } from '../solid/mesh/cap.ts';
import { facetedOutline } from '../solid/mesh/extrusion-mesh.ts';
import { type Point, polygonArea, SAME_MM } from '../solid/outline.ts';
import { findCrossing } from '../solid/outline-crossing.ts';
import type { Extrusion, MeshShape, Turned } from '../solid/placed.ts';
import type { Growth } from './pattern-piece.ts';

/** The same body drawn out along an axis; undefined where it cannot be seen so: only what has a rectangle for outline can. */
export function alongAxis(shape: Extrusion, axis: Axis): Extrusion | undefined {
  if (shape.axis === axis) return shape;
  const { outline, a0, a1 } = shape;
  const isUpright = outline.every(({ u, v, bulge }, i) => {
    const next = outline[(i + 1) % outline.length]!;
    return bulge === 0 && (Math.abs(u - next.u) <= SAME_MM || Math.abs(v - next.v) <= SAME_MM);
  });
  if (outline.length !== 4 || !isUpright) return undefined;
  const frame = frameOf(shape.axis);
  const span = (of: (corner: Point) => number) => [Math.min(...outline.map(of)), Math.max(...outline.map(of))] as const;
  const extent: (readonly [number, number])[] = [];
  extent[frame.u] = span(({ u }) => u);
  extent[frame.v] = span(({ v }) => v);
  extent[frame.a] = [a0, a1];
  const to = frameOf(axis);
  const [[u0, u1], [v0, v1], [b0, b1]] = [extent[to.u]!, extent[to.v]!, extent[to.a]!];
  const corners = [
    { u: u0, v: v0, bulge: 0 },
    { u: u1, v: v0, bulge: 0 },
    { u: u1, v: v1, bulge: 0 },
    { u: u0, v: v1, bulge: 0 },
  ];
  return { is: 'extrusion', axis, a0: b0, a1: b1, outline: corners };
}

/** @returns undefined where its outline would run into itself. */
export function draftTurned(shape: Turned, growth: Growth, adds: boolean): Turned | undefined {
  const broken = growth.breaks === undefined ? shape.outline : brokenAt(shape.outline, growth.breaks);
  const outline = broken.map((point, i) => {
    const before = broken[(i + broken.length - 1) % broken.length]!;
    const after = broken[(i + 1) % broken.length]!;
    const side = sideOf(point.a - before.a) + sideOf(after.a - point.a);
    // On the axis it stays on the axis.
    if (point.r === 0 || side === 0) return point;
    const out = (adds ? 1 : -1) * Math.sign(side) * growth.at(point.a);
    return { a: point.a, r: Math.max(0, point.r + out) };
  });
  const flat = outline.map(({ a, r }) => ({ u: a, v: r, bulge: 0 }));
  return polygonArea(flat) > SAME_MM && !findCrossing(flat) ? { ...shape, outline } : undefined;
}

/** Outlines run counter-clockwise: back along the axis on the outside, onwards on the inside. */
const sideOf = (along: number): -1 | 0 | 1 => (along < -SAME_MM ? 1 : along > SAME_MM ? -1 : 0);

type TurnedPoint = Turned['outline'][number];

/** The outline with corners wherever it passes a place. */
const brokenAt = (outline: readonly TurnedPoint[], place: number): readonly TurnedPoint[] =>
  outline.flatMap((point, i) => {
    const next = outline[(i + 1) % outline.length]!;
    const passes = (point.a - place) * (next.a - place) < 0;
    if (!passes || Math.min(Math.abs(point.a - place), Math.abs(next.a - place)) <= SAME_MM) return [point];
    const share = (place - point.a) / (next.a - point.a);
    return [point, { a: place, r: point.r + share * (next.r - point.r) }];
  });

/** @returns one mesh for each side of the parting; undefined where an outline would run into itself. */
export function draftExtrusion(
  { axis, a0, a1, outline }: Extrusion,
  growth: Growth,
  adds: boolean,
): readonly MeshShape[] | undefined {
  const points = facetedOutline(outline, 'fine');
  const places = growth.breaks === undefined ? [a0, a1] : [a0, growth.breaks, a1];
  const outlines = places.map((place) => movedOut(points, (adds ? 1 : -1) * growth.at(place)));
  const halves: MeshShape[] = [];
  for (let i = 0; i + 1 < places.length; i++) {
    const [low, high] = [outlines[i], outlines[i + 1]];
    if (!low || !high) return undefined;
    halves.push(tapered(axis, low, high, places[i]!, places[i + 1]!));
  }
  return halves;
}

/** A counter-clockwise polygon with every side moved outwards, its corners staying sharp. */
function movedOut(points: readonly Point[], by: number): readonly Point[] | undefined {
  if (by === 0) return points;
  const normals = points.map((point, i) => {
    const next = points[(i + 1) % points.length]!;
    const length = Math.hypot(next.u - point.u, next.v - point.v);
    return { u: (next.v - point.v) / length, v: (point.u - next.u) / length };
  });
  const moved = points.map((point, i) => {
    const [before, after] = [normals[(i + points.length - 1) % points.length]!, normals[i]!];
    const onward = 1 + before.u * after.u + before.v * after.v;
    return { u: point.u + (by * (before.u + after.u)) / onward, v: point.v + (by * (before.v + after.v)) / onward };
  });
  const isSound = moved.every(({ u, v }) => Number.isFinite(u) && Number.isFinite(v)) && keepsItsSides(points, moved);
  if (!isSound || polygonArea(moved) <= SAME_MM) return undefined;
  return findCrossing(moved.map(({ u, v }) => ({ u, v, bulge: 0 }))) ? undefined : moved;
}

/** Whether no side has turned about: one that is used up by its neighbours would run backwards. */
const keepsItsSides = (points: readonly Point[], moved: readonly Point[]): boolean =>
  points.every((point, i) => {
    const j = (i + 1) % points.length;
    const [next, from, to] = [points[j]!, moved[i]!, moved[j]!];
    return (next.u - point.u) * (to.u - from.u) + (next.v - point.v) * (to.v - from.v) > 0;
  });

/** What lies between two outlines of as many corners, at two places along an axis. */
function tapered(axis: Axis, low: readonly Point[], high: readonly Point[], a0: number, a1: number): MeshShape {
  const draft = meshDraft(axis);
  const under = low.map(({ u, v }) => draft.vertex(u, v, a0));
  const over = high.map(({ u, v }) => draft.vertex(u, v, a1));
  low.forEach((_, i) => {
    const j = (i + 1) % low.length;
    draft.triangle(under[i]!, under[j]!, over[j]!, 0);
    draft.triangle(under[i]!, over[j]!, over[i]!, 0);
  });
  for (const [a, b, c] of capOf(low)) draft.triangle(under[a]!, under[c]!, under[b]!, 0);
  for (const [a, b, c] of capOf(high)) draft.triangle(over[a]!, over[b]!, over[c]!, 0);
  const { vertices, triangles } = draft.done();
  return { is: 'mesh', vertices, triangles };
}
