import type { RowStatus } from './row.ts';

/**
 * Unified inch threads.
 * Source: ASME B1.1. Read on published charts, except 1-3/8-6, which is from memory.
 */
export interface UnifiedThread {
  /** As written: `10`, `1/4`, `1-1/8`. */
  readonly size: string;
  readonly isNumber: boolean;
  readonly majorInch: number;
  readonly series: 'UNC' | 'UNF';
  /** Threads per inch. */
  readonly perInch: number;
  readonly status: RowStatus;
}

/** Major diameter of a number size in inches: 0.060 + 0.013 N (ASME B1.1), in thousandths to stay exact. */
export const numberSizeInch = (number: number): number => (60 + 13 * number) / 1000;

/** The number sizes of the standard: 0 to 6 in ones, then 8, 10, 12. */
export const numberSizes: readonly number[] = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12];

const numbered = (number: number, coarse: number | undefined, fine: number): readonly UnifiedThread[] =>
  pair(String(number), true, numberSizeInch(number), coarse, fine);

const inches = (size: string, majorInch: number, coarse: number, fine: number): readonly UnifiedThread[] =>
  pair(size, false, majorInch, coarse, fine);

function pair(
  size: string,
  isNumber: boolean,
  majorInch: number,
  coarse: number | undefined,
  fine: number,
): readonly UnifiedThread[] {
  const row = (series: 'UNC' | 'UNF', perInch: number): UnifiedThread => {
    const status = size === '1-3/8' && series === 'UNC' ? 'from memory' : 'read';
    return { size, isNumber, majorInch, series, perInch, status };
  };
  return coarse === undefined ? [row('UNF', fine)] : [row('UNC', coarse), row('UNF', fine)];
}

export const unifiedThreads: readonly UnifiedThread[] = [
  numbered(0, undefined, 80),
  numbered(1, 64, 72),
  numbered(2, 56, 64),
  numbered(3, 48, 56),
  numbered(4, 40, 48),
  numbered(5, 40, 44),
  numbered(6, 32, 40),
  numbered(8, 32, 36),
  numbered(10, 24, 32),
  numbered(12, 24, 28),
  inches('1/4', 0.25, 20, 28),
  inches('5/16', 0.3125, 18, 24),
  inches('3/8', 0.375, 16, 24),
  inches('7/16', 0.4375, 14, 20),
  inches('1/2', 0.5, 13, 20),
  inches('9/16', 0.5625, 12, 18),
  inches('5/8', 0.625, 11, 18),
  inches('3/4', 0.75, 10, 16),
  inches('7/8', 0.875, 9, 14),
  inches('1', 1, 8, 12),
  inches('1-1/8', 1.125, 7, 12),
  inches('1-1/4', 1.25, 7, 12),
  inches('1-3/8', 1.375, 6, 12),
  inches('1-1/2', 1.5, 6, 12),
].flat();
