import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import { axesAcross } from '../build/body-uses.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Numbers } from '../plan/numbers.ts';
import { type Bounds, boundsOfCopy } from '../solid/bounds.ts';
import { createHolder, type Holds } from '../solid/holds-point.ts';
import type { PlacedBody, Vec3 } from '../solid/placed.ts';
import { faceFields } from './shifted-body.ts';

/** Metal that is drawn on a machined surface already, by a machined body that takes it away. */
export interface DrawnStock {
  readonly of: StationId | DimensionId;
  readonly body: BodyId;
  /** The way that the finished surface looks along its axis; of a bore −1, as it looks inwards. */
  readonly looks: 1 | -1;
  /** Across the surface, mm: at most so much where the casting is not flat above it; 0 where nothing is taken. */
  readonly thickMm: number;
}

export const isCutAway = ({ record }: Pick<PlacedBody, 'record'>): boolean =>
  !record.adds && record.finish === 'machined';

/** Just off a face, mm. */
const OFF_MM = 0.01;
/** Lines nearer than this are one axis, mm. */
const COAXIAL_MM = 0.5;

interface Cast {
  readonly box: Bounds;
  readonly holds: Holds;
}

/** The finished faces that the machined bodies leave, and how much metal lies on them as it is drawn. */
export function drawnStock(bodies: readonly PlacedBody[], numbers: Numbers): readonly DrawnStock[] {
  const metal = bodies.flatMap(({ record, shape, moves }): readonly Cast[] =>
    shape && record.adds
      ? moves.map((move) => ({ box: boundsOfCopy(shape, move), holds: createHolder(shape, move) }))
      : [],
  );
  return bodies
    .filter(isCutAway)
    .flatMap((body) => [...facesLeft(body, metal, numbers), ...boreLeft(body, bodies, numbers)]);
}

function facesLeft(
  { record, shape, moves }: PlacedBody,
  metal: readonly Cast[],
  numbers: Numbers,
): readonly DrawnStock[] {
  const move = moves[0];
  // A drilled hole is made by its tool in solid metal; its bottom is no face that wants stock.
  if (!shape || !move || record.shape.type === 'hole') return [];
  const box = boundsOfCopy(shape, move);
  const holds = createHolder(shape, move);
  const found = new Map<StationId, DrawnStock & { readonly axis: Axis }>();
  for (const { station, axis } of faceFields(record)) {
    const at = numbers.place(station)?.at;
    if (at === undefined) continue;
    const k = axes.indexOf(axis);
    // A corner within the body is no face across the axis.
    const isLow = Math.abs(box.min[k]! - at) < OFF_MM / 2;
    const isHigh = Math.abs(box.max[k]! - at) < OFF_MM / 2;
    if (isLow === isHigh) continue;
    const looks = isLow ? 1 : -1;
    const far = isLow ? box.max[k]! : box.min[k]!;
    const thick = samplesIn(box, k).flatMap((point) => {
      const inside = withAt(point, k, at + looks * OFF_MM);
      if (!holds(inside) || !metal.some((one) => one.holds(withAt(point, k, at - looks * OFF_MM)))) return [];
      const over = metal.filter((one) => one.holds(inside));
      const reach = Math.max(0, ...over.map((one) => looks * ((isLow ? one.box.max[k]! : one.box.min[k]!) - at)));
      return [Math.min(reach, Math.abs(far - at))];
    });
    if (thick.length === 0) continue;
    const before = found.get(station);
    const thickMm = Math.min(before?.thickMm ?? Infinity, ...thick);
    found.set(station, { of: station, body: record.id, looks, thickMm, axis });
  }
  const all = [...found.values()];
  // Between two walls that stay, everything is cut out of solid metal.
  const left = all.filter((one) => !all.some((other) => other.axis === one.axis && other.looks !== one.looks));
  return left.map(({ axis: _, ...row }) => row);
}

/** A machined hole about a cast one: what lies between the two. A hole in solid metal has all the stock there is. */
function boreLeft({ record }: PlacedBody, bodies: readonly PlacedBody[], numbers: Numbers): readonly DrawnStock[] {
  const own = holeIn(record.shape, numbers);
  if (!own) return [];
  const cast = bodies.flatMap((other) => {
    if (other.record.adds || other.record.finish === 'machined' || !other.shape) return [];
    const hole = holeIn(other.record.shape, numbers);
    return hole && isCoaxial(own, hole) && hole.diameterMm < own.diameterMm ? [hole.diameterMm] : [];
  });
  if (cast.length === 0) return [];
  const thickMm = (own.diameterMm - Math.max(...cast)) / 2;
  return [{ of: own.size, body: record.id, looks: -1, thickMm }];
}

interface HoleIn {
  readonly size: DimensionId;
  readonly axis: string;
  readonly u: number;
  readonly v: number;
  readonly ends: readonly [number, number];
  readonly diameterMm: number;
}

function holeIn(shape: PlacedBody['record']['shape'], numbers: Numbers): HoleIn | undefined {
  if (shape.type !== 'hole' && shape.type !== 'cylinder') return undefined;
  const [from, to] = shape.type === 'hole' ? [shape.from, shape.to] : shape.ends;
  const [u, v, a, b] = [...shape.centre, from, to].map((id) => numbers.place(id)?.at);
  const record = numbers.record(shape.diameter);
  const value = numbers.resolved(shape.diameter)?.value;
  if (u === undefined || v === undefined || a === undefined || b === undefined || value === undefined) return undefined;
  const isRadius = record?.kind === 'dimension' && record.measure.type === 'size' && record.measure.form === 'radius';
  return {
    size: shape.diameter,
    axis: shape.axis,
    u,
    v,
    ends: [Math.min(a, b), Math.max(a, b)],
    diameterMm: isRadius ? 2 * value : value,
  };
}

const isCoaxial = (a: HoleIn, b: HoleIn): boolean =>
  a.axis === b.axis && Math.hypot(a.u - b.u, a.v - b.v) < COAXIAL_MM && a.ends[0] < b.ends[1] && b.ends[0] < a.ends[1];

/** Places across the axis within a box: its middle and four about it, which a body with rounded corners has too. */
function samplesIn({ min, max }: Bounds, k: number): readonly Vec3[] {
  const [i, j] = axesAcross(axes[k]!).map((axis) => axes.indexOf(axis)) as [number, number];
  const at = (u: number, v: number): Vec3 => {
    const point: [number, number, number] = [0, 0, 0];
    point[i] = min[i]! + u * (max[i]! - min[i]!);
    point[j] = min[j]! + v * (max[j]! - min[j]!);
    return point;
  };
  return [at(0.5, 0.5), at(0.25, 0.25), at(0.25, 0.75), at(0.75, 0.25), at(0.75, 0.75)];
}

const withAt = (point: Vec3, k: number, value: number): Vec3 =>
  point.map((other, i) => (i === k ? value : other)) as unknown as Vec3;
