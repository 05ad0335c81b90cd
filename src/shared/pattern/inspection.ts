import type { BodyId, DimensionId, StationId } from '../base/ids.ts';
import { usesOf } from '../build/body-uses.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Numbers } from '../plan/numbers.ts';
import { boundsOf } from '../solid/bounds.ts';
import type { PlacedBody, Vec3 } from '../solid/placed.ts';
import { isCutAway } from './drawn-stock.ts';
import type { PatternDimension } from './pattern-dimensions.ts';
import { faceFields } from './shifted-body.ts';

/** A margin that hangs on a dimension: of a set-up's verdict, or of a joint. */
export interface CarriedMargin {
  readonly dimension: DimensionId;
  /** What is near: as its department calls it, e.g. `over-bed`; with the record that it is of. */
  readonly verdict: string;
  readonly of: string;
  /** mm as drawn; less than nothing where it hits. */
  readonly marginMm: number;
  /** mm of margin per mm of the dimension. */
  readonly sensitivity: number;
}

/** Why a line stands on the sheet. */
export type LineReason = 'margin' | 'overall' | 'bore' | 'large';

/** Where a margin ends: on the pattern, mm. */
export interface MarginEnd {
  readonly mm: number;
  readonly margin: CarriedMargin;
}

/** A measurement of the pattern, taken before it is coated. */
export interface InspectionLine {
  /** Stable: the dimension's id, or `box:X`; measured values are kept by it. */
  readonly key: string;
  readonly of: DimensionId | Axis;
  readonly why: readonly LineReason[];
  readonly expectedMm: number;
  /** Least and most; nothing where no table or limit says. Margins are taken in. */
  readonly go: readonly [number | undefined, number | undefined];
  /** Under this, and over this, something hits or does not reach. */
  readonly atLeast: MarginEnd | undefined;
  readonly atMost: MarginEnd | undefined;
  /** The bodies that it measures, and the places along each axis where its faces lie on the pattern. */
  readonly bodies: readonly BodyId[];
  readonly places: readonly { readonly axis: Axis; readonly at: number }[];
}

export interface SheetGiven {
  readonly dimensions: readonly PatternDimension[];
  readonly bodies: readonly PlacedBody[];
  readonly numbers: Numbers;
  readonly margins: readonly CarriedMargin[];
  /** Of the pattern; undefined while its solid is not worked out. */
  readonly box: { readonly min: Vec3; readonly max: Vec3 } | undefined;
  readonly factors: Vec3;
  /** ± on lengths overall, by their size on the casting; undefined beyond the table. */
  readonly tolerance: (castMm: number) => number | undefined;
}

/** Lines besides those that carry a margin: a short sheet is filled in. */
const BORES = 5;
const LARGE = 4;
/** Lengths within this of one overall are that, mm. */
const SAME_MM = 1;
/** A margin so large that no error of measuring comes near it is not put on the sheet, mm. */
const FAR_MM = 25;

/** The measurements that matter on this pattern: what carries a margin, overall, bores, the largest lengths. */
export function inspectionLines(given: SheetGiven): readonly InspectionLine[] {
  const { dimensions, bodies, margins, box, factors, tolerance } = given;
  const chosen = new Map<string, { row: PatternDimension; why: LineReason[] }>();
  const choose = (row: PatternDimension, reason: LineReason) => {
    const known = chosen.get(row.of);
    if (known) known.why.push(reason);
    else chosen.set(row.of, { row, why: [reason] });
  };
  const usable = dimensions.filter(({ patternMm, castMm }) => patternMm !== undefined && castMm > 0);
  for (const row of usable) if (marginsOf(row, margins).length > 0) choose(row, 'margin');
  const overall = box ? axes.map((axis, k) => ({ axis, mm: box.max[k]! - box.min[k]! })) : [];
  const bySize = [...usable].sort((a, b) => b.castMm - a.castMm || (a.of < b.of ? -1 : 1));
  for (const row of bySize.filter((one) => isBore(one, bodies)).slice(0, BORES)) choose(row, 'bore');
  const isOverall = ({ along, patternMm }: PatternDimension): boolean =>
    along.length === 1 && overall.some(({ axis, mm }) => axis === along[0] && Math.abs(mm - patternMm!) < SAME_MM);
  const lengths = bySize.filter((one) => one.along.length === 1 && !isOverall(one) && isOnPattern(one, given));
  for (const row of lengths.slice(0, LARGE)) choose(row, 'large');
  const lines = usable.flatMap((row) => {
    const found = chosen.get(row.of);
    return found ? [lineOf(row, found.why, given)] : [];
  });
  const boxes = overall.map(({ axis, mm }): InspectionLine => {
    const factor = factors[axes.indexOf(axis)]!;
    const band = tolerance(mm / factor);
    const k = axes.indexOf(axis);
    return {
      key: `box:${axis}`,
      of: axis,
      why: ['overall'],
      expectedMm: mm,
      go: band === undefined ? [undefined, undefined] : [mm - band * factor, mm + band * factor],
      atLeast: undefined,
      atMost: undefined,
      bodies: [],
      places: [
        { axis, at: box!.min[k]! },
        { axis, at: box!.max[k]! },
      ],
    };
  });
  return [
    ...lines.filter(({ why }) => why.includes('margin')),
    ...boxes,
    ...lines.filter(({ why }) => !why.includes('margin')),
  ];
}

const marginsOf = ({ of }: PatternDimension, margins: readonly CarriedMargin[]): readonly CarriedMargin[] =>
  margins.filter(({ dimension, sensitivity, marginMm }) => {
    if (dimension !== of || sensitivity === 0 || !Number.isFinite(marginMm)) return false;
    return Math.abs(marginMm / sensitivity) <= FAR_MM;
  });

/** Whether both ends are there to be measured: what only machining makes, like the centre of a drilled hole, is not. */
function isOnPattern({ of }: PatternDimension, { bodies, numbers }: SheetGiven): boolean {
  const record = numbers.record(of);
  if (record?.kind !== 'dimension' || record.measure.type !== 'between') return false;
  const { from, to } = record.measure;
  return [from, to].every((end) => bodies.some((body) => !isCutAway(body) && body.stations.includes(end)));
}

/** A size of something that takes metal away. */
const isBore = ({ of, along }: PatternDimension, bodies: readonly PlacedBody[]): boolean =>
  along.length === 2 && bodies.some((body) => !isCutAway(body) && (takesWith(body, of) || usesBore(body, of)));

const takesWith = ({ record, dimensions }: PlacedBody, size: DimensionId): boolean =>
  !record.adds && dimensions.includes(size);
const usesBore = ({ record: { shape } }: PlacedBody, size: DimensionId): boolean =>
  shape.type === 'cylinder' && shape.bore === size;

function lineOf(row: PatternDimension, why: readonly LineReason[], given: SheetGiven): InspectionLine {
  const factor = row.patternMm! / row.castMm;
  let [atLeast, atMost]: (MarginEnd | undefined)[] = [];
  for (const margin of marginsOf(row, given.margins)) {
    // It may change so much until nothing of the margin is left: downwards where the margin grows with it.
    const end = (row.castMm - margin.marginMm / margin.sensitivity) * factor;
    if (margin.sensitivity > 0) {
      if (!atLeast || end > atLeast.mm) atLeast = { mm: end, margin };
    } else if (!atMost || end < atMost.mm) atMost = { mm: end, margin };
  }
  const least = largest(row.go?.[0], atLeast?.mm);
  const most = smallest(row.go?.[1], atMost?.mm);
  const found = measuredBy(row, given);
  return { key: row.of, of: row.of, why, expectedMm: row.patternMm!, go: [least, most], atLeast, atMost, ...found };
}

const largest = (a: number | undefined, b: number | undefined) =>
  a === undefined ? b : b === undefined ? a : Math.max(a, b);
const smallest = (a: number | undefined, b: number | undefined) =>
  a === undefined ? b : b === undefined ? a : Math.min(a, b);

/** The bodies whose faces a dimension measures, and where these lie on the pattern. */
function measuredBy(
  { of, along, stockMm }: PatternDimension,
  { bodies, numbers, factors }: SheetGiven,
): Pick<InspectionLine, 'bodies' | 'places'> {
  const record = numbers.record(of);
  const measure = record?.kind === 'dimension' ? record.measure : undefined;
  if (measure?.type !== 'between') {
    const users = bodies.filter(
      (body) => !isCutAway(body) && usesOf(body.record).sizes.some(({ dimension }) => dimension === of),
    );
    return { bodies: users.map(({ record: body }) => body.id), places: [] };
  }
  const axis = along[0];
  const factor = factors[axes.indexOf(axis)]!;
  const ends: readonly StationId[] = [measure.from, measure.to];
  const [from, to] = ends.map((station) => numbers.place(station)?.at ?? 0);
  const sign = to! < from! ? -1 : 1;
  const places = [
    { axis, at: (from! - sign * stockMm[0]) * factor },
    { axis, at: (to! + sign * stockMm[1]) * factor },
  ];
  const users = bodies.filter(
    (body) => !isCutAway(body) && faceFields(body.record).some(({ station }) => ends.includes(station)),
  );
  return { bodies: users.map(({ record: body }) => body.id), places };
}

/** Where some bodies begin and end along an axis of the pattern. */
export function stretchesOf(
  ids: readonly BodyId[],
  axis: Axis,
  bodies: readonly PlacedBody[],
  factors: Vec3,
): readonly (readonly [number, number])[] {
  const k = axes.indexOf(axis);
  return bodies.flatMap((body) => {
    const box = ids.includes(body.record.id) ? boundsOf(body) : undefined;
    return box ? [[box.min[k]! * factors[k]!, box.max[k]! * factors[k]!] as const] : [];
  });
}
