import { assert } from '../base/assert.ts';
import type { DimensionId, StationId } from '../base/ids.ts';
import type { Body, Shape } from '../build/body.ts';
import { type SizeRole, type StationUse, usesOf, valueInRole } from '../build/body-uses.ts';
import type { Numbers } from '../plan/numbers.ts';
import { exactVolume } from '../solid/exact-volume.ts';
import { meshOfSolid, pitchOf } from '../solid/place-bodies.ts';
import type { Placed } from '../solid/place-problem.ts';
import { placeShape } from '../solid/place-shape.ts';
import type { ExactShape } from '../solid/placed.ts';
import type { Places } from '../solid/places.ts';

/** How far some of the stations and sizes that a body names are moved, mm, by the field in which its record names them. */
export type Shifts = ReadonlyMap<string, number>;

/** Fields that name a line or a plane through a body, which are no faces of it: centres, a rib's middle, a mesh's origin. */
const noFace = /^(repeats\/|shape\/(centre|centres|at|origin)(\/|$))/;

/** The fields of a body that hold a face, with the stations at which it stands. */
export const faceFields = (record: Body): readonly StationUse[] =>
  usesOf(record).stations.filter(({ field }) => !noFace.test(field));

/**
 * The shape of a body with some of its stations and sizes moved. Only the fields that are named move: a station that is a
 * face here and a centre there stays the centre that it was.
 *
 * All that the body names must be known.
 */
export function placeShifted(record: Body, numbers: Numbers, shifts: Shifts): Placed<ExactShape> {
  const { stations, sizes } = usesOf(record);
  const stands = new Map<StationId, { readonly of: StationId; readonly by: number }>();
  const measures = new Map<DimensionId, { readonly of: DimensionId; readonly by: number }>();
  let shape: unknown = record.shape;
  for (const { station, field } of stations) {
    const by = shifts.get(field);
    if (by === undefined || by === 0 || !field.startsWith('shape/')) continue;
    const stand = `${station} ${field}` as StationId;
    stands.set(stand, { of: station, by });
    shape = withId(shape, field.split('/').slice(1), stand);
  }
  for (const { dimension, field } of sizes) {
    const by = shifts.get(field);
    if (by === undefined || by === 0 || !field.startsWith('shape/')) continue;
    const stand = `${dimension} ${field}` as DimensionId;
    measures.set(stand, { of: dimension, by });
    shape = withId(shape, field.split('/').slice(1), stand);
  }
  return placeShape(shape as Shape, placesWith(numbers, stands, measures));
}

/** A value of plain objects and lists with the id at the end of a way exchanged for another. */
function withId(value: unknown, [step, ...rest]: readonly string[], id: string): unknown {
  if (step === undefined) return id;
  if (Array.isArray(value)) return value.map((one, i) => (i === Number(step) ? withId(one, rest, id) : one));
  const fields = value as Readonly<Record<string, unknown>>;
  return { ...fields, [step]: withId(fields[step], rest, id) };
}

interface Moved<I> {
  readonly of: I;
  readonly by: number;
}

function placesWith(
  numbers: Numbers,
  stands: ReadonlyMap<StationId, Moved<StationId>>,
  measures: ReadonlyMap<DimensionId, Moved<DimensionId>>,
): Places {
  const dimension = (id: DimensionId) => {
    const own = measures.get(id)?.of ?? id;
    const record = numbers.record(own);
    const value = numbers.resolved(own)?.value;
    assert(record?.kind === 'dimension' && value !== undefined, `a size that a body is placed by has a value (${own})`);
    return { record, value, by: measures.get(id)?.by ?? 0 };
  };
  return {
    at(id) {
      const moved = stands.get(id);
      const place = numbers.place(moved?.of ?? id);
      assert(place, `a station that a body is placed by stands somewhere (${id})`);
      return place.at + (moved?.by ?? 0);
    },
    size(id: DimensionId, role: SizeRole) {
      const { record, value, by } = dimension(id);
      return valueInRole(record, value, role) + by;
    },
    pitch(id) {
      const { record, value } = dimension(id);
      return pitchOf(record, value);
    },
    isThread(id) {
      const { measure } = dimension(id).record;
      return measure.type === 'size' && measure.form === 'thread';
    },
    mesh(id) {
      const solid = numbers.record(id);
      assert(solid?.kind === 'solid', `the mesh of an imported body is in the build (${id})`);
      return meshOfSolid(solid);
    },
  };
}

/** Small enough to leave every shape a shape, and large enough for the volumes of a casting to tell the difference, mm. */
const STEP_MM = 1 / 1024;

/**
 * How the volume of a body, one of its copies, grows with a field, mm³ per mm: of a face its area, seen along the axis. Taken
 * from exact volumes, as a central difference: shapes are of the third degree in their places at most.
 */
export function growthWith(record: Body, numbers: Numbers, field: string): number {
  const volume = (by: number): number | undefined => {
    const placed = placeShifted(record, numbers, new Map([[field, by]]));
    return placed.ok ? exactVolume(placed.value) : undefined;
  };
  const [less, more] = [volume(-STEP_MM), volume(STEP_MM)];
  if (less !== undefined && more !== undefined) return (more - less) / (2 * STEP_MM);
  const now = volume(0);
  if (now === undefined) return 0;
  if (more !== undefined) return (more - now) / STEP_MM;
  return less === undefined ? 0 : (now - less) / STEP_MM;
}
