import type { RowStatus } from './row.ts';

/** Where a figure of the workshop comes from. A *common practice* has no source; it is a start, not a rule. */
export type FigureStatus = RowStatus | 'common practice';

export interface Sourced {
  /** In words. */
  readonly source: string;
  readonly status: FigureStatus;
}

/** From the least to the most that the table gives; equal where it gives one figure. */
export interface FigureRange extends Sourced {
  readonly least: number;
  readonly most: number;
}

/** What tables mark a figure of common practice with. */
export const PRACTICE: Sourced = { source: 'common practice, no source', status: 'common practice' };

// 1 in = 127/5 mm exactly: multiplied first and divided once, the nearest float64.
const inchesToMm = (inches: number): number => (inches * 127) / 5;

/** A speed in m/min from feet per minute: 1 ft = 0.3048 m exactly. */
export const feetPerMinute = (feet: number): number => (feet * 381) / 1250;

export const range = (least: number, most: number, { source, status }: Sourced): FigureRange => ({
  least,
  most,
  source,
  status,
});

/** A range of speeds that its table gives in feet per minute, in m/min. */
export const inFeet = (least: number, most: number, from: Sourced): FigureRange =>
  range(feetPerMinute(least), feetPerMinute(most), from);

/** A range of lengths that its table gives in inches, in mm. */
export const inInches = (least: number, most: number, from: Sourced): FigureRange =>
  range(inchesToMm(least), inchesToMm(most), from);

/** A range times a factor, with what was done to it. */
export const scaled = (row: FigureRange, factor: number, why: Sourced): FigureRange => ({
  least: row.least * factor,
  most: row.most * factor,
  source: `${row.source}; ${why.source}`,
  // A figure is only as good as the weaker of the two it is made of.
  status: weaker(row.status, why.status),
});

const order: readonly FigureStatus[] = ['read', 'from memory', 'common practice'];
const weaker = (a: FigureStatus, b: FigureStatus): FigureStatus => (order.indexOf(a) > order.indexOf(b) ? a : b);
