import { assert } from '../base/assert.ts';
import type { BodyId, DimensionId, PartId, StationId } from '../base/ids.ts';
import type { Body } from '../build/body.ts';
import { type BodyUses, formOf, servesAs, usesOf, valueInRole } from '../build/body-uses.ts';
import type { Dimension } from '../build/dimension.ts';
import { type CodedMesh, decodeMesh } from '../build/mesh-code.ts';
import type { BuildRecord, RecordId } from '../build/records.ts';
import type { Solid } from '../build/solid.ts';
import type { AxisDrawing, Drawing } from '../drawing/drawing.ts';
import { sameContent } from '../drawing/keep.ts';
import { parseThread } from '../quantity/parse-thread.ts';
import { coarsePitch } from '../tables/metric-threads.ts';
import { placeRepeats } from './place-repeats.ts';
import { placeShape } from './place-shape.ts';
import type { BodyProblem, PlacedBody } from './placed.ts';
import type { Places } from './places.ts';

/** The records that placing reads: a whole build answers `get`. */
export interface BodyRecords {
  /** Bodies of the part in list order. */
  readonly bodies: readonly Body[];
  get(id: RecordId): BuildRecord | undefined;
}

/** Places bodies, and remembers how they stood. */
export interface Placing {
  /**
   * The bodies of a part as its drawing places them now, in list order. A body that stands as it stood when last asked
   * keeps its identity, and so does the whole list.
   */
  placeBodies(part: PartId, records: BodyRecords, drawing: Drawing): readonly PlacedBody[];
  /** Lets go of a part that is no longer in the build. */
  forget(part: PartId): void;
}

interface Kept {
  readonly placed: PlacedBody;
  readonly uses: BodyUses;
  /** All that the placed body was worked out from besides its record. */
  readonly behind: readonly unknown[];
}

export function createPlacing(): Placing {
  const parts = new Map<PartId, { list: readonly PlacedBody[]; bodies: Map<BodyId, Kept> }>();
  return {
    placeBodies(part, records, drawing) {
      const before = parts.get(part);
      const stations = stationsIn(drawing.axesOf(part));
      const bodies = new Map<BodyId, Kept>();
      const list = records.bodies.map((body) => {
        const kept = placeAgain(before?.bodies.get(body.id), body, records, drawing, stations);
        bodies.set(body.id, kept);
        return kept.placed;
      });
      const same = before && before.list.length === list.length && list.every((one, i) => one === before.list[i]);
      const now = same ? before.list : list;
      parts.set(part, { list: now, bodies });
      return now;
    },
    forget: (part) => void parts.delete(part),
  };
}

/** Places the bodies of a part once, remembering nothing. */
export const placeBodies = (part: PartId, records: BodyRecords, drawing: Drawing): readonly PlacedBody[] =>
  createPlacing().placeBodies(part, records, drawing);

type StationAt = (station: StationId) => number | undefined;

// An axis keeps its identity until an edit moves something on it.
const positions = new WeakMap<AxisDrawing, ReadonlyMap<StationId, number>>();

/** Where the stations of a part stand, in mm from their datums; without a way from a datum a station stands nowhere. */
function stationsIn(axes: readonly AxisDrawing[]): StationAt {
  const maps = axes.map((axis) => {
    let map = positions.get(axis);
    if (!map) {
      const placed = axis.datum === undefined ? [] : axis.stations.filter(({ group }) => group === 0);
      map = new Map(placed.map(({ id, at }) => [id, at]));
      positions.set(axis, map);
    }
    return map;
  });
  return (station) => {
    for (const map of maps) {
      const at = map.get(station);
      if (at !== undefined) return at;
    }
    return undefined;
  };
}

function placeAgain(
  kept: Kept | undefined,
  body: Body,
  records: BodyRecords,
  drawing: Drawing,
  stationAt: StationAt,
): Kept {
  const uses = kept?.placed.record === body ? kept.uses : usesOf(body);
  const sizes = uses.sizes.map(({ dimension }) => sizeOf(dimension, records, drawing));
  const solid = uses.solid === undefined ? undefined : records.get(uses.solid);
  const behind: unknown[] = uses.stations.map(({ station }) => stationAt(station));
  for (const size of sizes) behind.push(size?.value, size?.pitch, size && formOf(size.record.measure));
  behind.push(solid?.kind === 'solid' ? solid : undefined);
  if (kept && kept.placed.record === body && sameList(kept.behind, behind)) return kept;
  const placed = placeOne(body, uses, sizes, solid?.kind === 'solid' ? solid : undefined, stationAt);
  return { placed: kept ? keepPlaced(kept.placed, placed) : placed, uses, behind };
}

/** Other numbers may come to the same: half of a diameter that is now written as a radius, a problem that stays. */
function keepPlaced(old: PlacedBody, fresh: PlacedBody): PlacedBody {
  if (old.record !== fresh.record) return fresh;
  return fresh.shape?.is !== 'mesh' && sameContent(old, fresh) ? old : fresh;
}

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((value, i) => Object.is(value, b[i]));

interface Size {
  readonly record: Dimension;
  readonly value: number | undefined;
  /** mm, of a thread whose pitch is known. */
  readonly pitch: number | undefined;
}

function sizeOf(id: DimensionId, records: BodyRecords, drawing: Drawing): Size | undefined {
  const record = records.get(id);
  if (record?.kind !== 'dimension') return undefined;
  const { value } = drawing.dimension(id);
  return { record, value, pitch: value === undefined ? undefined : pitchOf(record, value) };
}

/** The pitch of a thread as written (`M8x1`), else the coarse one of the major diameter that a formula came to. */
export function pitchOf({ measure, value: text }: Dimension, majorMm: number): number | undefined {
  if (measure.type !== 'size' || measure.form !== 'thread') return undefined;
  const thread = parseThread(text);
  return thread?.ok ? thread.value.pitchMm : coarsePitch(majorMm);
}

function placeOne(
  body: Body,
  uses: BodyUses,
  sizes: readonly (Size | undefined)[],
  solid: Solid | undefined,
  stationAt: StationAt,
): PlacedBody {
  const stations = [...new Set(uses.stations.map(({ station }) => station))];
  const dimensions = [...new Set(uses.sizes.map(({ dimension }) => dimension))];
  const place = (shape: PlacedBody['shape'], moves: PlacedBody['moves'], problem: BodyProblem | undefined) => ({
    record: body,
    shape,
    moves,
    problem,
    stations,
    dimensions,
  });
  const problem = whatIsMissing(uses, sizes, solid, stationAt);
  if (problem) return place(undefined, [], problem);
  const places = placesOf(uses, sizes, solid, stationAt);
  const shape = placeShape(body.shape, places);
  if (!shape.ok) return place(undefined, [], shape.error);
  const moves = placeRepeats(body.repeats, places);
  return moves.ok ? place(shape.value, moves.value, undefined) : place(undefined, [], moves.error);
}

function whatIsMissing(
  uses: BodyUses,
  sizes: readonly (Size | undefined)[],
  solid: Solid | undefined,
  stationAt: StationAt,
): BodyProblem | undefined {
  const stations = uses.stations.filter(({ station }) => stationAt(station) === undefined);
  const dimensions = uses.sizes.filter((_, i) => sizes[i]?.value === undefined);
  if (stations.length > 0 || dimensions.length > 0 || (uses.solid !== undefined && !solid)) {
    return {
      why: 'not-placed',
      stations: [...new Set(stations.map(({ station }) => station))],
      dimensions: [...new Set(dimensions.map(({ dimension }) => dimension))],
    };
  }
  const unfit = uses.sizes.filter(({ role }, i) => !servesAs(sizes[i]!.record.measure, role));
  if (unfit.length === 0) return undefined;
  return { why: 'shape', code: 'size-does-not-fit', at: [...new Set(unfit.map(({ dimension }) => dimension))] };
}

const meshes = new WeakMap<Solid, CodedMesh>();

/** The mesh of a record, decoded once. */
export function meshOfSolid(solid: Solid): CodedMesh {
  let mesh = meshes.get(solid);
  if (!mesh) {
    mesh = decodeMesh(solid);
    meshes.set(solid, mesh);
  }
  return mesh;
}

function placesOf(
  uses: BodyUses,
  sizes: readonly (Size | undefined)[],
  solid: Solid | undefined,
  stationAt: StationAt,
): Places {
  const byId = new Map(uses.sizes.map(({ dimension }, i) => [dimension, sizes[i]!]));
  const known = (id: DimensionId): Size & { readonly value: number } => {
    const size = byId.get(id);
    assert(size?.value !== undefined, `a size that a body is placed by has a value (${id})`);
    return { ...size, value: size.value };
  };
  return {
    at(station) {
      const at = stationAt(station);
      assert(at !== undefined, `a station that a body is placed by stands somewhere (${station})`);
      return at;
    },
    size(id, role) {
      const { record, value } = known(id);
      return valueInRole(record, value, role);
    },
    pitch: (id) => known(id).pitch,
    isThread(id) {
      const { measure } = known(id).record;
      return measure.type === 'size' && measure.form === 'thread';
    },
    mesh() {
      assert(solid, 'the mesh of an imported body is in the build');
      return meshOfSolid(solid);
    },
  };
}
