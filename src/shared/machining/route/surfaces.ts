import type { BodyId, DimensionId, StationId } from '../../base/ids.ts';
import { type Axis, axes } from '../../build/station.ts';
import { boundsOfCopy } from '../../solid/bounds.ts';
import { createHolder } from '../../solid/holds-point.ts';
import type { ExactShape, PlacedBody, Vec3 } from '../../solid/placed.ts';

/** What can be made true: a station or a size of a part. */
export type Surface = StationId | DimensionId;

/** Whether a surface is there in the casting before anything is cut: some body that is not machined has a face at it. */
export const isThereAsCast = (id: Surface, bodies: readonly PlacedBody[]): boolean =>
  bodies.some(
    ({ record, stations, dimensions }) =>
      record.finish !== 'machined' && (stations.includes(id as StationId) || dimensions.includes(id as DimensionId)),
  );

/** A box of metal right behind a face, which stands or falls with the face. */
interface Skin {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** How deep under a face its metal is looked at, mm. */
const SKIN_MM = 0.01;
/** Places nearer than this are one, mm. */
const SAME_MM = 1e-6;

/**
 * What cuts a surface away altogether: a machined body that takes away and holds all the metal behind every face there.
 *
 * A station is a face of a body where the body's box ends at it; a centreline, or a station within a body, is no face and
 * never goes. Only bodies without hollows are looked at as cutters, so that none is said to take what it leaves.
 *
 * @param axisOf the axis of a station and where it stands; undefined where it stands nowhere.
 */
export function cutterOf(
  surface: Surface,
  bodies: readonly PlacedBody[],
  axisOf: (station: StationId) => { readonly axis: Axis; readonly at: number } | undefined,
): readonly BodyId[] {
  const skins: Skin[] = [];
  for (const body of bodies) {
    const mine = surface.startsWith('station:')
      ? skinsAt(surface as StationId, body, axisOf)
      : body.dimensions.includes(surface as DimensionId) && body.record.adds
        ? wholeOf(body)
        : [];
    if (mine === undefined) return [];
    skins.push(...mine);
  }
  if (skins.length === 0) return [];
  return bodies
    .filter((body) => isCutter(body) && skins.every((skin) => takes(body, skin)))
    .map(({ record }) => record.id);
}

/** @returns undefined when the station lies within a body: it is no face then. */
function skinsAt(
  station: StationId,
  body: PlacedBody,
  axisOf: (station: StationId) => { readonly axis: Axis; readonly at: number } | undefined,
): readonly Skin[] | undefined {
  const { record, shape, stations, moves } = body;
  if (!record.adds || !shape || !stations.includes(station)) return [];
  const place = axisOf(station);
  if (!place) return undefined;
  const k = axes.indexOf(place.axis);
  const skins: Skin[] = [];
  for (const move of moves) {
    const { min, max } = boundsOfCopy(shape, move);
    const isLow = Math.abs(min[k]! - place.at) < SAME_MM;
    const isHigh = Math.abs(max[k]! - place.at) < SAME_MM;
    if (isLow === isHigh) {
      // A copy may lie elsewhere; the body itself has its face at the station, or the station is no face of it.
      if (move === moves[0]) return undefined;
      continue;
    }
    const [from, to] = isLow ? [place.at, place.at + SKIN_MM] : [place.at - SKIN_MM, place.at];
    skins.push({ min: withAt(min, k, from), max: withAt(max, k, to) });
  }
  return skins;
}

const withAt = (point: Vec3, k: number, value: number): Vec3 =>
  point.map((other, i) => (i === k ? value : other)) as unknown as Vec3;

const wholeOf = ({ shape, moves }: PlacedBody): readonly Skin[] | undefined =>
  shape && moves.map((move) => boundsOfCopy(shape, move));

const isCutter = ({ record, shape }: PlacedBody): boolean =>
  !record.adds && record.finish === 'machined' && shape !== undefined && isConvex(shape);

const takes = ({ shape, moves }: PlacedBody, skin: Skin): boolean =>
  moves.some((move) => cornersOf(skin).every(createHolder(shape!, move)));

function cornersOf({ min, max }: Skin): readonly Vec3[] {
  const corners: Vec3[] = [];
  for (const x of [min[0], max[0]])
    for (const y of [min[1], max[1]]) for (const z of [min[2], max[2]]) corners.push([x, y, z]);
  return corners;
}

/** Whether a shape that holds the corners of a box holds all of the box. */
function isConvex(shape: ExactShape): boolean {
  switch (shape.is) {
    case 'extrusion':
      return (
        shape.outline.every(({ bulge }) => bulge >= 0) && turnsOneWay(shape.outline.map(({ u, v }) => [u, v] as const))
      );
    case 'turned':
      return turnsOneWay(shape.outline.map(({ a, r }) => [a, r] as const)) && shape.outline.some(({ r }) => r === 0);
    case 'mesh':
      return false;
  }
}

function turnsOneWay(points: readonly (readonly [number, number])[]): boolean {
  let sign = 0;
  for (let i = 0; i < points.length; i++) {
    const [a, b, c] = [points[i]!, points[(i + 1) % points.length]!, points[(i + 2) % points.length]!];
    const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    if (Math.abs(cross) < SAME_MM) continue;
    if (sign !== 0 && Math.sign(cross) !== sign) return false;
    sign = Math.sign(cross);
  }
  return sign !== 0;
}
