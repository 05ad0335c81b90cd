import type { Finish, SizeForm, Source } from '../../../src/shared/build/dimension.ts';
import type { Part } from '../../../src/shared/build/part.ts';
import type { Axis, StationForm } from '../../../src/shared/build/station.ts';
import type { BodyEntry } from './body-sketch.ts';

/** A part as it is set down by hand: its list entry, its axes, the sizes that have no place along an axis, its bodies. */
export interface PartSketch {
  readonly fields: PartEntry;
  readonly axes: readonly AxisSketch[];
  readonly sizes: readonly DimensionSketch[];
  /** In the order in which they act. */
  readonly bodies: readonly BodyEntry[];
}

export type PartEntry = Pick<Part, 'name' | 'number' | 'sheet' | 'make' | 'material' | 'note'> & {
  readonly quantity?: number;
};

export interface AxisSketch {
  readonly axis: Axis;
  /** The first one is the datum. */
  readonly stations: readonly StationSketch[];
  readonly ties: readonly DimensionSketch[];
}

export interface StationSketch {
  readonly kind: 'station';
  readonly name: string;
  readonly form: StationForm;
}

export interface DimensionSketch {
  readonly kind: 'dimension';
  readonly name: string;
  /** Names of two stations of the axis, or what a size measures. */
  readonly measure: { readonly from: string; readonly to: string } | { readonly form: SizeForm };
  readonly value: string;
  readonly limits: string;
  readonly source: Source;
  readonly finish: Finish;
  readonly note: string;
}

/** Two stations that stand alike on both sides of the axis's datum. */
interface PairSketch {
  readonly kind: 'pair';
  readonly stations: readonly [left: StationSketch, right: StationSketch];
  /** The dimension across both; the half of it that ties them to the datum is added by {@link axis}. */
  readonly across: DimensionSketch;
}

/** What a dimension says beyond its value; machined, drawn and left to the general tolerance when nothing is said. */
export type More = Partial<Pick<DimensionSketch, 'limits' | 'source' | 'finish' | 'note'>>;

export const cast: More = { finish: 'as cast' };
export const derived: More = { source: 'derived' };
export const measured: More = { source: 'measured' };
export const within = (limits: string): More => ({ limits });

const station =
  (form: StationForm) =>
  (name: string): StationSketch => ({ kind: 'station', name, form });

export const face = station('face');
export const shoulder = station('shoulder');
export const centre = station('centreline');

const dimension = (
  name: string,
  measure: DimensionSketch['measure'],
  value: string,
  more: readonly More[],
): DimensionSketch => ({
  kind: 'dimension',
  name,
  measure,
  value,
  limits: '',
  source: 'drawn',
  finish: 'machined',
  note: '',
  ...Object.assign({}, ...more),
});

/** A dimension from one station of the axis to another, signed along the axis. */
export const tie = (name: string, from: string, to: string, value: string, ...more: readonly More[]): DimensionSketch =>
  dimension(name, { from, to }, value, more);

/**
 * Two stations placed alike about the datum by the one dimension across them, as a draughtsman gives a width or the
 * spacing of two screws.
 * @param stations the names of the stations on the smaller and the greater side.
 */
export const pair = (
  name: string,
  stations: readonly [string, string],
  form: StationForm,
  value: string,
  ...more: readonly More[]
): PairSketch => ({
  kind: 'pair',
  stations: [station(form)(stations[0]), station(form)(stations[1])],
  across: tie(name, stations[0], stations[1], value, ...more),
});

/** One axis of a part: stations, pairs and dimensions in list order; the first station is the datum. */
export function axis(
  which: Axis,
  datum: StationSketch,
  ...items: readonly (StationSketch | DimensionSketch | PairSketch)[]
): AxisSketch {
  const stations: StationSketch[] = [datum];
  const ties: DimensionSketch[] = [];
  for (const item of items) {
    if (item.kind === 'station') stations.push(item);
    else if (item.kind === 'dimension') ties.push(item);
    else {
      stations.push(...item.stations);
      ties.push(item.across, halfOf(item, datum));
    }
  }
  return { axis: which, stations, ties };
}

const halfOf = ({ stations, across }: PairSketch, datum: StationSketch): DimensionSketch => ({
  ...across,
  name: `half ${across.name}`,
  measure: { from: datum.name, to: stations[1].name },
  value: `"${across.name}" / 2`,
  limits: '',
  source: 'derived',
  note: '',
});

const size =
  (form: SizeForm) =>
  (name: string, value: string, ...more: readonly More[]): DimensionSketch =>
    dimension(name, { form }, value, more);

export const diameter = size('diameter');
export const radius = size('radius');
export const length = size('length');
export const angle = size('angle');
export const thread = size('thread');
export const count = size('count');

export const part = (
  fields: PartEntry,
  axes: readonly AxisSketch[],
  sizes: readonly DimensionSketch[],
  bodies: readonly BodyEntry[],
): PartSketch => ({ fields, axes, sizes, bodies });
