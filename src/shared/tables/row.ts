/** Whether a table row was read on a printed or scanned page, or is remembered and still to be checked. */
export type RowStatus = 'read' | 'from memory';

/** A tolerance looked up in a published table. */
export interface TableTolerance {
  /** Half of the band: the permitted deviation either way, in mm (degrees for angles). */
  readonly plusMinus: number;
  /** The row in words, with its source; ends in "(from memory)" when it was not read on a page. */
  readonly row: string;
  readonly status: RowStatus;
}

/** A range of nominal sizes, over `over` up to and including `upTo`, in mm. */
export interface SizeRange {
  readonly over: number;
  /** Infinity: without end. */
  readonly upTo: number;
}

/** @returns the index of the range that holds the size; -1 when none does. */
export function rangeOf(ranges: readonly SizeRange[], sizeMm: number): number {
  for (let i = 0; i < ranges.length; i++) if (sizeMm > ranges[i]!.over && sizeMm <= ranges[i]!.upTo) return i;
  return -1;
}

/** `30 to 120 mm`, `up to 10 mm`, `over 400 mm`. */
export function rangeInWords({ over, upTo }: SizeRange): string {
  if (upTo === Number.POSITIVE_INFINITY) return `over ${over} mm`;
  return over === 0 ? `up to ${upTo} mm` : `${over} to ${upTo} mm`;
}

/** The words of a row, its status made visible. */
export const rowInWords = (source: string, what: string, range: SizeRange, status: RowStatus): string =>
  `${source}, ${what}, ${rangeInWords(range)}${status === 'from memory' ? ' (from memory)' : ''}`;

/** Ranges that follow one another: `ranges(0.5, 3, 6)` is 0.5 to 3 and 3 to 6. */
export const ranges = (...bounds: readonly number[]): readonly SizeRange[] =>
  bounds.slice(1).map((upTo, i) => ({ over: bounds[i]!, upTo }));
