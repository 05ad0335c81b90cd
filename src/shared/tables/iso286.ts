import { type RowStatus, rangeOf, ranges, rowInWords } from './row.ts';

// ISO 286-1:2010 table 1: widths of the standard tolerance grades in micrometres. IT5 to IT11 read on published tables.
const gradeRanges = ranges(0, 3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500);

export const toleranceGrades = [5, 6, 7, 8, 9, 10, 11] as const;
export type ToleranceGrade = (typeof toleranceGrades)[number];

const widths: Readonly<Record<ToleranceGrade, readonly number[]>> = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
};

/** The width of a standard tolerance grade. */
export interface GradeWidth {
  /** Total band in mm. */
  readonly widthMm: number;
  readonly row: string;
  readonly status: RowStatus;
}

/**
 * Width of a standard tolerance grade of ISO 286-1.
 *
 * @param sizeMm nominal size in mm, up to 500.
 * @returns undefined beyond the table.
 */
export function gradeWidth(grade: ToleranceGrade, sizeMm: number): GradeWidth | undefined {
  const index = rangeOf(gradeRanges, sizeMm);
  const micrometres = widths[grade][index];
  if (micrometres === undefined) return undefined;
  const row = rowInWords('ISO 286-1:2010 table 1', `IT${grade}`, gradeRanges[index]!, 'read');
  return { widthMm: micrometres / 1000, row, status: 'read' };
}
