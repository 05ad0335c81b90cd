import { type AllowanceGrade, castingTolerance, machiningAllowance } from '../tables/casting.ts';
import { copeExtra, type PracticeFigure, startingGrade } from '../tables/pattern-practice.ts';

/** What a machined face of one casting needs by the tables. */
export interface Allowance {
  readonly grade: AllowanceGrade;
  /** Chosen by the founder, or the one to begin with. */
  readonly gradeFrom: 'written' | 'starting value';
  /** Largest overall dimension of the finished part, mm: it chooses the rows. */
  readonly largestMm: number;
  /** Required machining allowance, mm. */
  readonly requiredMm: number;
  /** Half of the casting tolerance of the largest dimension, so that the required stock is there on the smallest casting too. */
  readonly halfBandMm: number;
  /** More on faces that look up. */
  readonly cope: PracticeFigure;
  /** Rows behind it, in words with their trust. */
  readonly rows: readonly string[];
}

/**
 * Stock of one machined face by ISO 8062-3: required machining allowance and half of the casting tolerance, R = F + RMA + CT/2
 * (ISO 8062:1994 clause 6, from memory), both by the largest dimension of the casting as foundries do.
 *
 * @param grade as written; empty = the grade to begin with.
 * @param dctg casting tolerance grade of the build.
 * @param ownCopeMm what the founder adds to faces that look up; undefined = the table's.
 * @returns undefined beyond the tables.
 */
export function allowanceOf(
  grade: AllowanceGrade | '',
  dctg: number,
  largestMm: number,
  ownCopeMm: number | undefined,
): Allowance | undefined {
  const chosen = grade === '' ? startingGrade.grade : grade;
  const required = machiningAllowance(chosen, largestMm);
  const band = castingTolerance(dctg, largestMm);
  const cope: PracticeFigure | undefined =
    ownCopeMm === undefined ? copeExtra(largestMm) : { value: ownCopeMm, status: 'written', source: 'as written' };
  if (!required || !band || !cope) return undefined;
  const start = grade === '' ? [`grade ${chosen}: ${startingGrade.source} (${startingGrade.status})`] : [];
  return {
    grade: chosen,
    gradeFrom: grade === '' ? 'starting value' : 'written',
    largestMm,
    requiredMm: required.allowanceMm,
    halfBandMm: band.plusMinus,
    cope,
    rows: [...start, required.row, band.row, cope.source],
  };
}

/** Rough sizes of ISO 8062:1994 clause 6 (from memory): one face machined, two opposite ones, a bore; CT is the whole tolerance. */
export const roughSize = {
  oneFace: (finished: number, rma: number, ct: number): number => finished + rma + ct / 2,
  twoFaces: (finished: number, rma: number, ct: number): number => finished + 2 * rma + ct / 2,
  bore: (finished: number, rma: number, ct: number): number => finished - 2 * rma - ct / 2,
} as const;
