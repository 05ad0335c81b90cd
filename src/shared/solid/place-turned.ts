import type { DimensionId, StationId } from '../base/ids.ts';
import { ok } from '../base/result.ts';
import type { Shape } from '../build/body.ts';
import type { Axis } from '../build/station.ts';
import { polygonArea, SAME_MM } from './outline.ts';
import { findCrossing } from './outline-crossing.ts';
import { noSize, type Placed, shapeProblem } from './place-problem.ts';
import type { ExactShape, Turned } from './placed.ts';
import { type Across, type Places, pointAt } from './places.ts';

type TurnedPoint = Turned['outline'][number];
type Of<T extends Shape['type']> = Extract<Shape, { readonly type: T }>;

/** A closed outline, turned the right way round, about an axis. */
export function turned(axis: Axis, centre: Across, outline: readonly TurnedPoint[], places: Places): ExactShape {
  const { u, v } = pointAt(centre, places);
  const area = polygonArea(outline.map(({ a, r }) => ({ u: a, v: r })));
  return { is: 'turned', axis, u, v, outline: area < 0 ? [...outline].reverse() : outline };
}

export function placeCylinder(
  { axis, ends, centre, diameter, bore }: Of<'cylinder'>,
  places: Places,
): Placed<ExactShape> {
  const [a, b] = [places.at(ends[0]), places.at(ends[1])];
  if (Math.abs(a - b) <= SAME_MM) return noSize(...ends);
  const outer = places.size(diameter, 'diameter') / 2;
  if (outer <= SAME_MM) return noSize(diameter);
  const inner = bore === undefined ? 0 : places.size(bore, 'diameter') / 2;
  if (bore !== undefined && inner <= SAME_MM) return noSize(bore);
  if (inner >= outer - SAME_MM) return shapeProblem('bore-not-smaller', bore, diameter);
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  const outline = [
    { a: low, r: inner },
    { a: high, r: inner },
    { a: high, r: outer },
    { a: low, r: outer },
  ];
  return ok(turned(axis, centre, outline, places));
}

export function placeCone({ axis, ends, centre, diameters }: Of<'cone'>, places: Places): Placed<ExactShape> {
  const [a, b] = [places.at(ends[0]), places.at(ends[1])];
  if (Math.abs(a - b) <= SAME_MM) return noSize(...ends);
  const radii: number[] = [];
  for (const id of diameters) {
    const radius = id === undefined ? 0 : places.size(id, 'diameter') / 2;
    if (id !== undefined && radius <= SAME_MM) return noSize(id);
    radii.push(radius);
  }
  const [ra = 0, rb = 0] = radii;
  const outline = [{ a, r: 0 }, { a: b, r: 0 }, ...(rb > 0 ? [{ a: b, r: rb }] : []), { a, r: ra }];
  return ok(turned(axis, centre, outline, places));
}

export function placeRevolved({ axis, centre, outline }: Of<'revolved'>, places: Places): Placed<ExactShape> {
  const points: TurnedPoint[] = [];
  for (const { at, diameter } of outline) {
    const r = diameter === undefined ? 0 : places.size(diameter, 'diameter') / 2;
    // A diameter of zero is a point on the axis; less than nothing is none.
    if (diameter !== undefined && r < 0) return noSize(diameter);
    points.push({ a: places.at(at), r });
  }
  const idsOf = (i: number): readonly (StationId | DimensionId | undefined)[] => {
    const point = outline[i % outline.length]!;
    return [point.at, point.diameter];
  };
  const all = outline.flatMap((_, i) => idsOf(i));
  const short = points.findIndex(({ a, r }, i) => {
    const next = points[(i + 1) % points.length]!;
    return Math.hypot(next.a - a, next.r - r) <= SAME_MM;
  });
  if (short >= 0) return noSize(...idsOf(short), ...idsOf(short + 1));
  const flat = points.map(({ a, r }) => ({ u: a, v: r, bulge: 0 }));
  const widest = Math.max(...points.map(({ r }) => r));
  const length = Math.max(...points.map(({ a }) => a)) - Math.min(...points.map(({ a }) => a));
  if (widest <= SAME_MM || length <= SAME_MM) return noSize(...all);
  const crossing = findCrossing(flat);
  if (crossing) {
    return shapeProblem('outline-crosses', ...crossing.flatMap((side) => [...idsOf(side), ...idsOf(side + 1)]));
  }
  if (Math.abs(polygonArea(flat)) <= SAME_MM * SAME_MM) return noSize(...all);
  return ok(turned(axis, centre, points, places));
}
