import { type RowStatus, rangeInWords, rangeOf, ranges, rowInWords, type TableTolerance } from './row.ts';

// ISO 8062-3:2007 table 2: total tolerance bands in mm of DCTG 1 to 16 (the numbers of ISO 8062:1994, CT 1 to 16). Rows to
// 400 mm complete and 400 to 630 mm up to DCTG 12 read on a scanned page; all beyond from memory.
const NONE = undefined;

const castingRanges = ranges(0, 10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300, 10_000);

const bands: readonly (readonly (number | undefined)[])[] = [
  [0.09, 0.13, 0.18, 0.26, 0.36, 0.52, 0.74, 1, 1.5, 2, 2.8, 4.2, NONE, NONE, NONE, NONE], // up to 10 mm
  [0.1, 0.14, 0.2, 0.28, 0.38, 0.54, 0.78, 1.1, 1.6, 2.2, 3, 4.4, NONE, NONE, NONE, NONE], // 10 to 16 mm
  [0.11, 0.15, 0.22, 0.3, 0.42, 0.58, 0.82, 1.2, 1.7, 2.4, 3.2, 4.6, 6, 8, 10, 12], // 16 to 25 mm
  [0.12, 0.17, 0.24, 0.32, 0.46, 0.64, 0.9, 1.3, 1.8, 2.6, 3.6, 5, 7, 9, 11, 14], // 25 to 40 mm
  [0.13, 0.18, 0.26, 0.36, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 10, 12, 16], // 40 to 63 mm
  [0.14, 0.2, 0.28, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6, 9, 11, 14, 18], // 63 to 100 mm
  [0.15, 0.22, 0.3, 0.44, 0.62, 0.88, 1.2, 1.8, 2.5, 3.6, 5, 7, 10, 12, 16, 20], // 100 to 160 mm
  [NONE, 0.24, 0.34, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 14, 18, 22], // 160 to 250 mm
  [NONE, NONE, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6.2, 9, 12, 16, 20, 25], // 250 to 400 mm
  [NONE, NONE, NONE, 0.64, 0.9, 1.2, 1.8, 2.6, 3.6, 5, 7, 10, 14, 18, 22, 28], // 400 to 630 mm
  [NONE, NONE, NONE, 0.72, 1, 1.4, 2, 2.8, 4, 6, 8, 11, 16, 20, 25, 32], // 630 to 1000 mm
  [NONE, NONE, NONE, 0.8, 1.1, 1.6, 2.2, 3.2, 4.6, 7, 9, 13, 18, 23, 29, 37], // 1000 to 1600 mm
  [NONE, NONE, NONE, NONE, NONE, NONE, 2.6, 3.8, 5.4, 8, 10, 15, 21, 26, 33, 42], // 1600 to 2500 mm
  [NONE, NONE, NONE, NONE, NONE, NONE, NONE, 4.4, 6.2, 9, 12, 17, 24, 30, 38, 49], // 2500 to 4000 mm
  [NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, 7, 10, 14, 20, 28, 35, 44, 56], // 4000 to 6300 mm
  [NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, 11, 16, 23, 32, 40, 50, 64], // 6300 to 10000 mm
];

const statusOf = (rangeIndex: number, grade: number): RowStatus => {
  const { upTo } = castingRanges[rangeIndex]!;
  return upTo <= 400 || (upTo === 630 && grade <= 12) ? 'read' : 'from memory';
};

const castingRows: (TableTolerance | undefined)[] = new Array(castingRanges.length * 16).fill(undefined);

/**
 * Dimensional casting tolerance of ISO 8062-3, as ± half of the total band about the nominal size.
 *
 * @param grade DCTG 1 to 16.
 * @param sizeMm nominal size of the raw casting in mm.
 * @returns undefined where the table has no cell.
 */
export function castingTolerance(grade: number, sizeMm: number): TableTolerance | undefined {
  const index = rangeOf(castingRanges, sizeMm);
  const band = bands[index]?.[grade - 1];
  if (band === undefined) return undefined;
  // The words of a row are made once, not for each of the thousands of dimensions that fall in it.
  const place = index * 16 + grade - 1;
  const known = castingRows[place];
  if (known) return known;
  const status = statusOf(index, grade);
  const row = rowInWords('ISO 8062-3:2007 table 2', `DCTG ${grade}, half of ${band} mm`, castingRanges[index]!, status);
  const made: TableTolerance = { plusMinus: band / 2, row, status };
  castingRows[place] = made;
  return made;
}

/** Grades of required machining allowance, ISO 8062-3; A and B for special cases only. */
export const allowanceGrades = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K'] as const;
export type AllowanceGrade = (typeof allowanceGrades)[number];

const allowanceRanges = ranges(0, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300, 10_000);

// Required machining allowance in mm on each machined surface. The whole table is from memory.
const allowances: Readonly<Record<AllowanceGrade, readonly number[]>> = {
  A: [0.1, 0.1, 0.2, 0.3, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1],
  B: [0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 0.8, 0.9, 1, 1.1, 1.3, 1.4, 1.5],
  C: [0.2, 0.3, 0.4, 0.5, 0.7, 0.9, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2],
  D: [0.3, 0.3, 0.5, 0.8, 1, 1.3, 1.5, 1.8, 2, 2.2, 2.5, 2.8, 3],
  E: [0.4, 0.4, 0.7, 1.1, 1.4, 1.8, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5],
  F: [0.5, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6],
  G: [0.5, 0.7, 1.4, 2.2, 2.8, 3.5, 4, 5, 5.5, 6, 7, 8, 9],
  H: [0.7, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
  J: [1, 1.4, 2.8, 4, 5.5, 7, 9, 10, 11, 13, 14, 16, 17],
  K: [1.4, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24],
};

/** A required machining allowance. */
export interface MachiningAllowance {
  /** Metal to leave on each machined surface, in mm. */
  readonly allowanceMm: number;
  readonly row: string;
  readonly status: RowStatus;
}

/**
 * Required machining allowance of ISO 8062-3.
 *
 * @param largestMm largest overall dimension of the finished casting in mm: it chooses one allowance for all surfaces.
 * @returns undefined beyond the table.
 */
export function machiningAllowance(grade: AllowanceGrade, largestMm: number): MachiningAllowance | undefined {
  const index = rangeOf(allowanceRanges, largestMm);
  const allowanceMm = allowances[grade][index];
  if (allowanceMm === undefined) return undefined;
  const range = rangeInWords(allowanceRanges[index]!);
  const row = `ISO 8062-3:2007, required machining allowance grade ${grade}, ${range} overall (from memory)`;
  return { allowanceMm, row, status: 'from memory' };
}
