import type { Casting } from '../build/casting.ts';
import { type Axis, axes } from '../build/station.ts';
import { nameKey } from '../formula/name-key.ts';
import { type Alloy, type AlloyFigure, alloyNamed, type FigureStatus } from '../tables/alloys.ts';
import type { MeasuredContraction } from './measured-contraction.ts';
import type { PatternUnknown } from './pattern-unknown.ts';
import { readContraction } from './read-contraction.ts';

/** Where a contraction was taken from, the first that is there. */
export type ContractionFrom = 'written' | 'measured here' | 'measured before' | 'alloy';

/** What the published values of an alloy are. */
export interface PublishedContraction {
  readonly least: AlloyFigure;
  readonly usual: AlloyFigure;
  readonly most: AlloyFigure;
}

/** The linear contraction along one axis of a part: pattern = casting × (1 + percent / 100). */
export interface AxisContraction {
  readonly axis: Axis;
  /** Undefined when nothing tells it. */
  readonly percent: number | undefined;
  readonly from: ContractionFrom | undefined;
  /** Of the alloy's row: how far it may be trusted. What was written or measured is the founder's own. */
  readonly status: FigureStatus | 'own' | undefined;
  /** In words. */
  readonly source: string;
  /** Behind a measured one: lines measured, spread in percentage points; along other axes where `axis` there is another. */
  readonly measured: MeasuredContraction | undefined;
  /** What the casting may come to contract, percent: what was measured with its spread, else the published values. */
  readonly least: number | undefined;
  readonly most: number | undefined;
  readonly published: PublishedContraction | undefined;
  readonly unknown: readonly PatternUnknown[];
}

export interface ContractionGiven {
  readonly casting: Pick<Casting, 'contraction'>;
  /** What the part is made of, by name. */
  readonly material: string;
  readonly alloy: Alloy | undefined;
  /** Of this build, and of earlier ones. */
  readonly here: readonly MeasuredContraction[];
  readonly before: readonly MeasuredContraction[];
}

export type Contractions = readonly [AxisContraction, AxisContraction, AxisContraction];

/** The contraction along X, Y and Z: written, else measured in this build, else in earlier ones, else the alloy's usual one. */
export const contractionsOf = (given: ContractionGiven): Contractions =>
  axes.map((axis, i) => along(axis, given.casting.contraction[i]!, given)) as unknown as Contractions;

function along(axis: Axis, written: string, { material, alloy, here, before }: ContractionGiven): AxisContraction {
  const published = alloy && publishedOf(alloy);
  const unknown: PatternUnknown[] = [];
  const own = readContraction(written);
  if (!own.ok) unknown.push({ is: 'written', field: `contraction/${axes.indexOf(axis)}`, text: written });
  const range = { least: published?.least.value, most: published?.most.value };
  const rest = { axis, published, unknown, measured: undefined };
  if (own.ok && own.value !== undefined) {
    return { ...rest, ...range, percent: own.value, from: 'written', status: 'own', source: 'as written' };
  }
  const known = alloy && (pick(here, alloy, axis, 'measured here') ?? pick(before, alloy, axis, 'measured before'));
  if (known) {
    const { row, from } = known;
    const [least, most] = [row.percent - row.spread / 2, row.percent + row.spread / 2];
    return {
      ...rest,
      percent: row.percent,
      from,
      status: 'own',
      source: wordsOf(row, axis),
      measured: row,
      least,
      most,
    };
  }
  const usual = published?.usual;
  if (!usual) unknown.push({ is: 'alloy', name: material });
  return {
    ...rest,
    ...range,
    percent: usual?.value,
    from: usual && 'alloy',
    status: usual?.status,
    source: usual?.source ?? '',
  };
}

function publishedOf({ figures }: Alloy): PublishedContraction | undefined {
  const usual = figures.contractionUsual ?? figures.contractionLeast ?? figures.contractionMost;
  return usual && { usual, least: figures.contractionLeast ?? usual, most: figures.contractionMost ?? usual };
}

interface Picked {
  readonly row: MeasuredContraction;
  readonly from: ContractionFrom;
}

/** What was measured along the axis itself, else along the others: taken together, each row by its count. */
function pick(
  rows: readonly MeasuredContraction[],
  alloy: Alloy,
  axis: Axis,
  from: ContractionFrom,
): Picked | undefined {
  const ofAlloy = rows.filter((row) => row.count > 0 && isAlloy(row.alloy, alloy));
  const same = ofAlloy.filter((row) => row.axis === axis);
  const row = together(same) ?? together(ofAlloy);
  return row && { row, from };
}

/** By its own name, or by another of the table's for the same row. */
const isAlloy = (name: string, alloy: Alloy): boolean =>
  nameKey(name.trim()) === nameKey(alloy.name) || alloyNamed(name)?.name === alloy.name;

function together(rows: readonly MeasuredContraction[]): MeasuredContraction | undefined {
  const [first] = rows;
  if (!first || rows.length === 1) return first;
  const count = rows.reduce((sum, row) => sum + row.count, 0);
  const percent = rows.reduce((sum, row) => sum + row.count * row.percent, 0) / count;
  const least = Math.min(...rows.map((row) => row.percent - row.spread / 2));
  const most = Math.max(...rows.map((row) => row.percent + row.spread / 2));
  return { ...first, percent, count, spread: most - least };
}

const wordsOf = ({ count, axis: measured }: MeasuredContraction, axis: Axis): string =>
  `measured on ${count} ${count === 1 ? 'length' : 'lengths'}${measured === axis ? '' : ' along other axes'}`;

/** What an uncertain contraction makes of a length of the casting, mm: `minus` ≤ 0 ≤ `plus`. Nothing where no range is known. */
export function strayOf(
  { percent, least, most }: Pick<AxisContraction, 'percent' | 'least' | 'most'>,
  castMm: number,
): { readonly minus: number; readonly plus: number } {
  if (percent === undefined || least === undefined || most === undefined) return { minus: 0, plus: 0 };
  const pattern = Math.abs(castMm) * (1 + percent / 100);
  const at = (contraction: number) => pattern / (1 + contraction / 100) - Math.abs(castMm);
  // The metal that contracts most comes out shortest.
  return { minus: Math.min(0, at(most)), plus: Math.max(0, at(least)) };
}
