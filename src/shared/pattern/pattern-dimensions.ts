import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import { axesAcross, usesOf } from '../build/body-uses.ts';
import type { Dimension } from '../build/dimension.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Numbers } from '../plan/numbers.ts';
import { boundsOf } from '../solid/bounds.ts';
import type { PlacedBody } from '../solid/placed.ts';
import { castingTolerance } from '../tables/casting.ts';
import { roughSize } from './allowance.ts';
import { type Contractions, strayOf } from './contraction.ts';
import { isCutAway } from './drawn-stock.ts';
import { isAcross } from './machined-surfaces.ts';
import { growthOf } from './pattern-piece.ts';
import type { PatternPieces } from './pattern-pieces.ts';
import { faceFields } from './shifted-body.ts';
import type { StockPlan } from './stock.ts';

/** A dimension of the drawing, and what it comes to on the casting and on the pattern. All lengths are amounts, mm. */
export interface PatternDimension {
  readonly of: DimensionId;
  /** The axis that it runs along; of a size the two axes that it lies across. */
  readonly along: readonly [Axis] | readonly [Axis, Axis];
  readonly finishedMm: number;
  /** What stock adds to it (a bore loses): at its `from` and its `to`; of a size half each. */
  readonly stockMm: readonly [number, number];
  readonly castMm: number;
  /** Undefined while a contraction is not known, or when the hole is cast solid. */
  readonly patternMm: number | undefined;
  /** Where the two axes contract differently, so that a circle becomes an oval: along the one and along the other. */
  readonly oval: readonly [number, number] | undefined;
  /** The smallest (of a bore the largest) that ISO 8062 makes of it on the casting; undefined where no stock is on it. */
  readonly roughMm: number | undefined;
  /** Least and most that it may measure on the pattern. */
  readonly go: readonly [number, number] | undefined;
  /** What the range of the contraction may make of it on the casting. */
  readonly stray: { readonly minus: number; readonly plus: number };
  /** Draft adds so much to it at the parting; at the end farthest from there nothing. */
  readonly draftMm: number;
  /** Cast solid. */
  readonly isClosed: boolean;
}

export interface DimensionsGiven {
  readonly dimensions: readonly Dimension[];
  readonly bodies: readonly PlacedBody[];
  readonly numbers: Numbers;
  readonly castingGrade: number;
  readonly contractions: Contractions;
  readonly stock: StockPlan;
  readonly pieces: PatternPieces;
}

/** Every dimension that a pattern is made by, in list order. */
export const patternDimensions = (given: DimensionsGiven): readonly PatternDimension[] =>
  given.dimensions.flatMap((record) => {
    const { measure } = record;
    return (
      (measure.type === 'between' ? lengthRow(record, measure.from, measure.to, given) : sizeRow(record, given)) ?? []
    );
  });

function lengthRow(
  { id }: Dimension,
  fromId: StationId,
  toId: StationId,
  given: DimensionsGiven,
): PatternDimension | undefined {
  const { numbers, contractions, stock } = given;
  const [from, to] = [numbers.place(fromId), numbers.place(toId)];
  const station = numbers.record(fromId);
  if (!from || !to || station?.kind !== 'station') return undefined;
  const sign = to.at < from.at ? -1 : 1;
  const stockMm = [-sign * stationShift(stock, fromId), sign * stationShift(stock, toId)] as const;
  const finishedMm = Math.abs(to.at - from.at);
  const castMm = finishedMm + stockMm[0] + stockMm[1];
  const contraction = contractions[axes.indexOf(station.axis)]!;
  const factor = contraction.percent === undefined ? undefined : 1 + contraction.percent / 100;
  const draft = draftAt(fromId, given) + draftAt(toId, given);
  return {
    of: id,
    along: [station.axis],
    finishedMm,
    stockMm: [stockMm[0] + 0, stockMm[1] + 0],
    castMm,
    patternMm: factor === undefined ? undefined : castMm * factor,
    oval: undefined,
    roughMm: roughOf(finishedMm, stockMm, given),
    go: goOf(id, finishedMm, castMm, factor, given),
    stray: strayOf(contraction, castMm),
    draftMm: given.pieces.draft.taper?.draw === station.axis ? 0 : draft,
    isClosed: false,
  };
}

/** Where a station's face lies on the casting, beyond where it lies finished, along its axis. */
function stationShift({ rows }: StockPlan, station: StationId): number {
  const row = rows.find(({ of, looks, stockMm }) => of === station && looks !== undefined && stockMm !== undefined);
  return row ? row.looks! * row.stockMm! : 0;
}

function sizeRow(record: Dimension, given: DimensionsGiven): PatternDimension | undefined {
  const { numbers, contractions, stock, pieces, bodies } = given;
  const { measure, id } = record;
  const value = numbers.resolved(id)?.value;
  if (measure.type !== 'size' || value === undefined || !(value > 0)) return undefined;
  if (measure.form !== 'diameter' && measure.form !== 'radius' && measure.form !== 'length') return undefined;
  const use = placeOfSize(id, bodies);
  if (!use) return undefined;
  const perSide = stock.rows.find((row) => row.of === id && row.stockMm !== undefined && row.looks !== undefined);
  const isDrawn = perSide?.from === 'drawn';
  // What only machining cuts, in solid metal, is no size of the pattern.
  if (use.isCutAway && !isDrawn) return undefined;
  const side = perSide ? perSide.looks! * perSide.stockMm! : 0;
  // Of a radius one side, of everything else two.
  const stockMm = measure.form === 'radius' ? ([0, side] as const) : ([side, side] as const);
  const castMm = Math.max(0, value + stockMm[0] + stockMm[1]);
  const along = axesAcross(use.axis);
  const factors = along.map((axis) => contractions[axes.indexOf(axis)]!.percent);
  const [a, b] = factors.map((percent) => (percent === undefined ? undefined : castMm * (1 + percent / 100)));
  const isClosed = pieces.closed.some(({ body }) => use.bodies.includes(body)) || castMm === 0;
  const mean = a === undefined || b === undefined ? undefined : (a + b) / 2;
  return {
    of: id,
    along,
    finishedMm: value,
    stockMm,
    castMm,
    patternMm: isClosed ? undefined : mean,
    oval: a !== undefined && b !== undefined && Math.abs(a - b) > 1e-9 ? [a, b] : undefined,
    roughMm: roughOf(value, stockMm, given),
    go: isClosed || mean === undefined ? undefined : goOf(id, value, castMm, mean / castMm, given),
    stray: strayOf(contractions[axes.indexOf(along[0])]!, castMm),
    draftMm: 0,
    isClosed,
  };
}

interface SizeUse {
  readonly axis: Axis;
  readonly bodies: readonly BodyId[];
  readonly isCutAway: boolean;
}

/** The bodies that a size is of; its axis is the first one's. Counts, angles, corners' radii are of none. */
function placeOfSize(size: DimensionId, bodies: readonly PlacedBody[]): SizeUse | undefined {
  const users = bodies.filter(({ record, shape }) => {
    if (!shape) return false;
    return usesOf(record).sizes.some(({ dimension, field }) => dimension === size && isAcross(field));
  });
  const cast = users.filter((body) => !isCutAway(body));
  const [first] = cast.length > 0 ? cast : users;
  const shape = first?.record.shape;
  if (!shape || !('axis' in shape)) return undefined;
  // A rib's thickness lies along its axis, and contracts with it; close enough to the two across to be shown with them.
  return { axis: shape.axis, bodies: users.map(({ record }) => record.id), isCutAway: cast.length === 0 };
}

function roughOf(
  finishedMm: number,
  stockMm: readonly [number, number],
  { stock: { allowance }, castingGrade }: DimensionsGiven,
): number | undefined {
  const band = castingTolerance(castingGrade, finishedMm);
  if (!allowance || !band) return undefined;
  const [rma, ct] = [allowance.requiredMm, 2 * band.plusMinus];
  const grows = stockMm.filter((mm) => mm > 0).length;
  const shrinks = stockMm.filter((mm) => mm < 0).length;
  if (grows > 0 && shrinks === 0) return (grows === 1 ? roughSize.oneFace : roughSize.twoFaces)(finishedMm, rma, ct);
  if (shrinks === 2) return roughSize.bore(finishedMm, rma, ct);
  return undefined;
}

/**
 * With stock on it, or without limits of its own, a length may stray by the casting tolerance of the casting's size; an as-cast
 * one with limits by those.
 */
function goOf(
  id: DimensionId,
  finishedMm: number,
  castMm: number,
  factor: number | undefined,
  { numbers, castingGrade }: DimensionsGiven,
): readonly [number, number] | undefined {
  if (factor === undefined) return undefined;
  const resolved = numbers.resolved(id);
  // The general tolerance of machined dimensions is for what machining makes, not for the casting.
  const limits = castMm === finishedMm && resolved?.limits?.origin !== 'general' ? resolved?.limits : undefined;
  if (limits) {
    const [low, high] = [limits.lower, limits.upper].map(Math.abs).sort((a, b) => a - b);
    // A distance that is written backwards has its limits the other way round.
    return [low! * factor, high! * factor];
  }
  const band = castingTolerance(castingGrade, castMm);
  return band && [(castMm - band.plusMinus) * factor, (castMm + band.plusMinus) * factor];
}

/** What draft adds at the parting to the face at a station: the most that any body with a face there has. */
function draftAt(station: StationId, { bodies, pieces }: DimensionsGiven): number {
  const taper = pieces.draft.taper;
  if (!taper) return 0;
  const k = axes.indexOf(taper.draw);
  const most = bodies.map((body) => {
    if (isCutAway(body) || !faceFields(body.record).some((use) => use.station === station)) return 0;
    const box = boundsOf(body);
    if (!box) return 0;
    const [low, high] = [box.min[k]!, box.max[k]!];
    const nearest = Math.min(high, Math.max(low, taper.partingMm));
    return growthOf(low, high, taper.partingMm, taper.slope).at(nearest);
  });
  return Math.max(0, ...most);
}
