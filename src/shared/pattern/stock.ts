import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import { usesOf } from '../build/body-uses.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Reading } from '../plan/amounts.ts';
import type { Numbers } from '../plan/numbers.ts';
import { boundsOf } from '../solid/bounds.ts';
import type { PlacedBody, Vec3 } from '../solid/placed.ts';
import { castingTolerance } from '../tables/casting.ts';
import { type Allowance, allowanceOf } from './allowance.ts';
import { drawnStock, isCutAway } from './drawn-stock.ts';
import { type AskedBy, isAcross, type MachinedSurface, machinedSurfaces } from './machined-surfaces.ts';
import type { PatternUnknown } from './pattern-unknown.ts';
import { faceFields, growthWith, type Shifts } from './shifted-body.ts';

/** Stock on one machined surface. */
export interface StockRow {
  readonly of: StationId | DimensionId;
  /** The one body that is machined there; undefined: whatever has a face there. */
  readonly body: BodyId | undefined;
  readonly by: readonly AskedBy[];
  /**
   * The way that the surface looks: 1 along its axis, or outwards of a size; −1 against it, or inwards. Undefined where that
   * cannot be told, or there is no such surface.
   */
  readonly looks: 1 | -1 | undefined;
  /** Whether it looks up in the mould; undefined while the casting does not say which way is up. */
  readonly isCope: boolean | undefined;
  /** mm across the surface; of a size on each side. Undefined where it cannot be told. */
  readonly stockMm: number | undefined;
  /** Written for the face, by the tables, or drawn by a machined body that takes it off. */
  readonly from: 'written' | 'tables' | 'drawn' | undefined;
  /** What the tables ask for, mm, on the smallest casting that the tolerance allows. */
  readonly requiredMm: number | undefined;
  readonly unknown: readonly PatternUnknown[];
}

/** The machining stock of a casting. */
export interface StockPlan {
  /** Undefined beyond the tables, or while no body has a shape. */
  readonly allowance: Allowance | undefined;
  readonly rows: readonly StockRow[];
  /** What it makes of the bodies: how far the faces and sizes of each are moved, by field. */
  readonly shifts: ReadonlyMap<BodyId, Shifts>;
  readonly unknown: readonly PatternUnknown[];
}

export interface StockGiven {
  readonly casting: Casting;
  readonly bodies: readonly PlacedBody[];
  readonly operations: readonly Operation[];
  readonly numbers: Numbers;
  readonly reading: Reading;
  /** Casting tolerance grade of the build. */
  readonly castingGrade: number;
}

/** Growth that is nothing beside what came together: no face is left bare there. */
const BALANCED = 1e-6;

/** Works out where stock lies, how much of it, and what that makes of the bodies. */
export function stockOf(given: StockGiven): StockPlan {
  const { casting, bodies, numbers, reading } = given;
  const unknown: PatternUnknown[] = [];
  const ownCope = reading.plain(casting.copeExtra, 'copeExtra');
  if (!ownCope.ok) unknown.push(ownCope.error);
  const largestMm = largestOf(bodies);
  const copeMm = ownCope.ok ? ownCope.value : undefined;
  const allowance =
    largestMm === undefined ? undefined : allowanceOf(casting.stockGrade, given.castingGrade, largestMm, copeMm);
  const shifts = new Map<BodyId, Map<string, number>>();
  const shift = (body: BodyId, field: string, by: number) => {
    const fields = shifts.get(body) ?? new Map<string, number>();
    shifts.set(body, fields);
    if (Math.abs(by) >= Math.abs(fields.get(field) ?? 0)) fields.set(field, by);
  };
  const drawn = drawnStock(bodies, numbers);
  const isDrawn = new Set<string>(drawn.map(({ of }) => of));
  const surfaces = machinedSurfaces(bodies, given.operations, casting, numbers);
  const rows: StockRow[] = [];
  for (const surface of surfaces) {
    const own = casting.stock.find(({ station }) => station === surface.of);
    // A face that is drawn with its stock is not given more of it, unless the founder asks.
    if (isDrawn.has(surface.of) && !own) continue;
    // What is cut into solid metal needs no stock: it is all there.
    if (!own && isOfCutAwayOnly(surface, bodies)) continue;
    const station = numbers.record(surface.of);
    rows.push(
      station?.kind === 'station'
        ? faceRow(surface, station.axis, own?.written, given, allowance, shift)
        : sizeRow(surface, given, allowance, shift),
    );
  }
  for (const { of, body, looks, thickMm } of drawn) {
    const station = numbers.record(of);
    const up = station?.kind === 'station' ? isCopeFace(casting, station.axis, looks) : false;
    const by = surfaces.flatMap((surface) => (surface.of === of ? surface.by : []));
    rows.push({
      of,
      body,
      by: [{ is: 'body', body }, ...by],
      looks,
      isCope: up,
      stockMm: thickMm,
      from: 'drawn',
      requiredMm: allowance?.requiredMm,
      unknown: [],
    });
  }
  if (largestMm !== undefined && !allowance && rows.some(({ from }) => from === undefined)) {
    unknown.push({ is: 'table', sizeMm: largestMm });
  }
  if (casting.up === undefined && rows.length > 0) unknown.push({ is: 'field', field: 'up' });
  return { allowance, rows, shifts, unknown };
}

/** Whether only bodies that machining takes away have this face or this size. */
function isOfCutAwayOnly({ of }: MachinedSurface, bodies: readonly PlacedBody[]): boolean {
  const users = bodies.filter(
    ({ stations, dimensions }) => stations.includes(of as StationId) || dimensions.includes(of as DimensionId),
  );
  return users.length > 0 && users.every(isCutAway);
}

type Shift = (body: BodyId, field: string, by: number) => void;

function faceRow(
  surface: MachinedSurface,
  axis: Axis,
  written: string | undefined,
  { casting, bodies, numbers, reading }: StockGiven,
  allowance: Allowance | undefined,
  shift: Shift,
): StockRow {
  const station = surface.of as StationId;
  const unknown: PatternUnknown[] = [];
  const faces = facesAt(station, surface.body, bodies, numbers);
  const gross = faces.reduce((sum, face) => sum + Math.abs(face.growth), 0);
  const net = faces.reduce((sum, face) => sum + face.growth, 0);
  const looks = Math.abs(net) > BALANCED * gross ? (net > 0 ? 1 : -1) : undefined;
  if (!numbers.place(station)) unknown.push({ is: 'station', station });
  else if (faces.length === 0) unknown.push({ is: 'face', of: station });
  else if (looks === undefined) unknown.push({ is: 'direction', station });
  const isCope = looks && isCopeFace(casting, axis, looks);
  const own = written === undefined ? undefined : reading.plain(written, `stock/${station}`);
  const amount = own?.ok ? own.value : undefined;
  if (own && !own.ok) unknown.push(own.error);
  else if (amount !== undefined && amount < 0)
    unknown.push({ is: 'written', field: `stock/${station}`, text: written! });
  const hasOwn = amount !== undefined && amount >= 0;
  const byTables = allowance && allowance.requiredMm + allowance.halfBandMm + (isCope ? allowance.cope.value : 0);
  const stockMm = hasOwn ? amount : byTables;
  if (looks !== undefined && stockMm !== undefined) {
    for (const { body, field, sign } of faces) shift(body, field, sign * looks * stockMm);
  }
  return {
    ...surface,
    looks,
    isCope,
    stockMm: looks === undefined ? undefined : stockMm,
    from: hasOwn ? 'written' : byTables === undefined ? undefined : 'tables',
    requiredMm: allowance?.requiredMm,
    unknown,
  };
}

/** A face of a body that is not machined away, at a station. */
interface Face {
  readonly body: BodyId;
  readonly field: string;
  /** What the part gains by moving it a mm along its axis, mm³. */
  readonly growth: number;
  /** −1 where a mirrored copy has its face here: the body's own then moves the other way. */
  readonly sign: 1 | -1;
}

/**
 * The faces at a station. Where one body alone is machined there, what takes away at the same station goes with it, so that a
 * cored hole still comes out at the face.
 */
function facesAt(
  station: StationId,
  only: BodyId | undefined,
  bodies: readonly PlacedBody[],
  numbers: Numbers,
): readonly Face[] {
  const own = bodies.flatMap((body) => {
    const { record, shape, moves } = body;
    if (!shape || isCutAway(body)) return [];
    if (only !== undefined && record.id !== only && record.adds) return [];
    const sign = record.adds ? 1 : -1;
    return faceFields(record).flatMap((use) => {
      if (use.station !== station) return [];
      const growth = sign * moves.length * growthWith(record, numbers, use.field);
      const isAlong = only !== undefined && record.id !== only;
      return [{ body: record.id, field: use.field, growth: isAlong ? 0 : growth, sign: 1 } as const];
    });
  });
  return own.length > 0 ? own : facesOfCopies(station, bodies, numbers);
}

/** Places nearer than this are one, mm. */
const SAME_MM = 1e-6;

/** Faces that copies of bodies have at a station which no body names: the other lug of a mirrored pair. */
function facesOfCopies(station: StationId, bodies: readonly PlacedBody[], numbers: Numbers): readonly Face[] {
  const place = numbers.place(station);
  const record = numbers.record(station);
  if (!place || record?.kind !== 'station') return [];
  const row = 4 * axes.indexOf(record.axis);
  return bodies.flatMap((body) => {
    if (!body.shape || isCutAway(body)) return [];
    const way = body.record.adds ? 1 : -1;
    return faceFields(body.record).flatMap(({ station: at, axis, field }): readonly Face[] => {
      const from = numbers.place(at);
      if (!from) return [];
      const column = row + axes.indexOf(axis);
      const copy = body.moves.find(
        (move) =>
          Math.abs(Math.abs(move[column]!) - 1) < SAME_MM &&
          Math.abs(move[column]! * from.at + move[row + 3]! - place.at) < SAME_MM,
      );
      if (!copy) return [];
      const sign = copy[column]! < 0 ? -1 : 1;
      const growth = sign * way * growthWith(body.record, numbers, field);
      return [{ body: body.record.id, field, growth, sign }];
    });
  });
}

function sizeRow(
  surface: MachinedSurface,
  { bodies, numbers, castingGrade }: StockGiven,
  allowance: Allowance | undefined,
  shift: Shift,
): StockRow {
  const size = surface.of as DimensionId;
  const value = numbers.resolved(size)?.value;
  const ways = bodies.flatMap((body) => {
    const { record, shape } = body;
    if (!shape || isCutAway(body) || (surface.body !== undefined && record.id !== surface.body)) return [];
    return usesOf(record).sizes.flatMap(({ dimension, field, role }) => {
      if (dimension !== size || !isAcross(field)) return [];
      const growth = (record.adds ? 1 : -1) * growthWith(record, numbers, field);
      return growth === 0 ? [] : [{ body: record.id, field, role, way: growth > 0 ? 1 : -1 } as const];
    });
  });
  const unknown: PatternUnknown[] = [];
  if (value === undefined) unknown.push({ is: 'dimension', dimension: size });
  else if (!bodies.some(({ dimensions }) => dimensions.includes(size))) unknown.push({ is: 'face', of: size });
  const band = value === undefined ? undefined : castingTolerance(castingGrade, Math.abs(value));
  // R = F ± (2 RMA + CT/2) over both sides.
  const side = allowance && band && allowance.requiredMm + band.plusMinus / 2;
  if (side !== undefined) for (const { body, field, way } of ways) shift(body, field, way * 2 * side);
  const looks = new Set(ways.map(({ way }) => way));
  return {
    ...surface,
    looks: looks.size === 1 ? [...looks][0] : undefined,
    isCope: false,
    stockMm: ways.length > 0 ? side : undefined,
    from: side === undefined || ways.length === 0 ? undefined : 'tables',
    requiredMm: allowance?.requiredMm,
    unknown,
  };
}

function isCopeFace({ up }: Pick<Casting, 'up'>, axis: Axis, looks: 1 | -1): boolean | undefined {
  if (up === undefined) return undefined;
  return up[1] === axis && (up[0] === '+' ? 1 : -1) === looks;
}

/** The largest overall dimension of the bodies that add, as they are drawn. */
function largestOf(bodies: readonly PlacedBody[]): number | undefined {
  const box = boxOfAdding(bodies);
  return box && Math.max(...axes.map((_, k) => box.max[k]! - box.min[k]!));
}

function boxOfAdding(
  bodies: readonly Pick<PlacedBody, 'record' | 'shape' | 'moves'>[],
): { readonly min: Vec3; readonly max: Vec3 } | undefined {
  const boxes = bodies.flatMap((body) => (body.record.adds ? (boundsOf(body) ?? []) : []));
  if (boxes.length === 0) return undefined;
  const min = axes.map((_, k) => Math.min(...boxes.map((box) => box.min[k]!)));
  const max = axes.map((_, k) => Math.max(...boxes.map((box) => box.max[k]!)));
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 };
}
