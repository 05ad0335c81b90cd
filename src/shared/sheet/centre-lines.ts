import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import { axesAcross } from '../build/body-uses.ts';
import type { Axis } from '../build/station.ts';
import { moved } from '../solid/moves.ts';
import { sidesOf } from '../solid/outline.ts';
import type { ExactShape, PlacedBody, Vec3 } from '../solid/placed.ts';
import type { Point } from './sheet.ts';
import { indexOfAxis, inFrame, type ViewFrame } from './view-frame.ts';

/** A round thing of a body: its axis from end to end and its greatest radius, mm of the part. */
export interface Axle {
  readonly body: BodyId;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/** A centre line of a view in mm of the part, before it is let out beyond the outline. */
export type CentreLine =
  | { readonly is: 'axis'; readonly from: Point; readonly to: Point; readonly bodies: readonly BodyId[] }
  | { readonly is: 'cross'; readonly at: Point; readonly radius: number; readonly bodies: readonly BodyId[] }
  /** The circle on which copies stand. */
  | { readonly is: 'circle'; readonly at: Point; readonly radius: number; readonly bodies: readonly BodyId[] };

/** A circle on which the copies of a body stand round an axis, mm of the part. */
export interface PitchCircle {
  readonly body: BodyId;
  readonly axis: Axis;
  readonly centre: Vec3;
  readonly radius: number;
}

const SAME = 1e-5;

/** Point of the part at (a along the axis, u and v across it). */
export function pointOn(axis: Axis, a: number, u: number, v: number): Vec3 {
  const at = [0, 0, 0];
  const [first, second] = axesAcross(axis);
  at[indexOfAxis(axis)] = a;
  at[indexOfAxis(first)] = u;
  at[indexOfAxis(second)] = v;
  return at as unknown as Vec3;
}

/** Turned faces, and rounded ends of at least half a turn, of every copy of a body. */
export function axlesOf({ record, shape, moves }: PlacedBody): readonly Axle[] {
  if (!shape) return [];
  const own = axlesOfShape(shape);
  return moves.flatMap((move) =>
    own.map(({ from, to, radius }) => ({ body: record.id, from: moved(move, from), to: moved(move, to), radius })),
  );
}

function axlesOfShape(shape: ExactShape): readonly Omit<Axle, 'body'>[] {
  if (shape.is === 'mesh') return [];
  if (shape.is === 'turned') {
    const { axis, u, v, outline } = shape;
    const places = outline.map(({ a }) => a);
    const [low, high] = [Math.min(...places), Math.max(...places)];
    const radius = Math.max(...outline.map(({ r }) => r));
    return [{ from: pointOn(axis, low, u, v), to: pointOn(axis, high, u, v), radius }];
  }
  const rounds = new Map<string, { u: number; v: number; radius: number; sweep: number }>();
  for (const { arc } of sidesOf(shape.outline)) {
    if (!arc) continue;
    const { u, v } = arc.centre;
    const key = [u, v, arc.radius].map((value) => Math.round(value / SAME)).join();
    const known = rounds.get(key);
    if (known) known.sweep += arc.sweep;
    else rounds.set(key, { u, v, radius: arc.radius, sweep: arc.sweep });
  }
  return [...rounds.values()]
    .filter(({ sweep }) => Math.abs(sweep) > Math.PI - 1e-9)
    .map(({ u, v, radius }) => ({
      from: pointOn(shape.axis, shape.a0, u, v),
      to: pointOn(shape.axis, shape.a1, u, v),
      radius,
    }));
}

/** The circles that the copies of a body stand on, where the drawing gives their diameter. */
export const pitchCircles = (
  { record, shape, moves }: PlacedBody,
  places: ReadonlyMap<StationId, number>,
  diameterOf: (id: DimensionId) => number,
): readonly PitchCircle[] => {
  if (!shape || moves.length < 2) return [];
  // Repeats after the circle copy the circle too; that is left out, as it is rare and the crosses are there.
  const [repeat] = record.repeats;
  if (repeat?.type !== 'circle' || repeat.circle === undefined) return [];
  const [u, v] = repeat.centre.map((station) => places.get(station)!) as [number, number];
  return [
    {
      body: record.id,
      axis: repeat.axis,
      centre: pointOn(repeat.axis, 0, u, v),
      radius: diameterOf(repeat.circle) / 2,
    },
  ];
};

/** The centre lines that a view shows: a cross where the eye looks along the axis, a line where it looks across it. */
export function centreLines(
  axles: readonly Axle[],
  circles: readonly PitchCircle[],
  frame: ViewFrame,
): readonly CentreLine[] {
  const crosses = new Map<string, { at: Point; radius: number; bodies: Set<BodyId> }>();
  const runs = new Map<string, { from: Point; to: Point; bodies: Set<BodyId> }>();
  const key = (...values: readonly number[]) => values.map((value) => Math.round(value / SAME)).join();
  for (const { body, from, to, radius } of axles) {
    const [ax, ay, az] = inFrame(frame, from);
    const [bx, by, bz] = inFrame(frame, to);
    const length = Math.hypot(bx - ax, by - ay);
    if (length < SAME) {
      const known = crosses.get(key(ax, ay));
      if (known) {
        known.radius = Math.max(known.radius, radius);
        known.bodies.add(body);
      } else crosses.set(key(ax, ay), { at: [ax, ay], radius, bodies: new Set([body]) });
      continue;
    }
    // Seen aslant a centre line helps nobody.
    if (Math.abs(bz - az) > 1e-3 * length) continue;
    const isBackwards = bx < ax - SAME || (Math.abs(bx - ax) <= SAME && by < ay);
    const [start, end]: [Point, Point] = isBackwards
      ? [
          [bx, by],
          [ax, ay],
        ]
      : [
          [ax, ay],
          [bx, by],
        ];
    const [ux, uy] = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
    const line = key(ux, uy, ux * start[1] - uy * start[0]);
    const known = runs.get(line);
    if (!known) {
      runs.set(line, { from: start, to: end, bodies: new Set([body]) });
      continue;
    }
    const along = ([x, y]: Point) => ux * x + uy * y;
    if (along(start) < along(known.from)) known.from = start;
    if (along(end) > along(known.to)) known.to = end;
    known.bodies.add(body);
  }
  const seenRound = circles.filter(({ axis }) => axis === frame.towards.axis);
  return [
    ...seenRound.map(({ body, centre, radius }): CentreLine => {
      const [x, y] = inFrame(frame, centre);
      return { is: 'circle', at: [x, y], radius, bodies: [body] };
    }),
    ...[...crosses.values()].map(({ at, radius, bodies }) => ({
      is: 'cross' as const,
      at,
      radius,
      bodies: [...bodies],
    })),
    ...[...runs.values()].map(({ from, to, bodies }) => ({ is: 'axis' as const, from, to, bodies: [...bodies] })),
  ];
}
