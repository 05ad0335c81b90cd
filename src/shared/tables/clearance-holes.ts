import { drillCalled } from './drills.ts';
import type { RowStatus } from './row.ts';

/** How freely a screw goes through: the words of ISO 273 (fine, medium, coarse) and of ASME B18.2.8 (close, normal, loose). */
export type ClearanceFit = 'fine' | 'medium' | 'coarse' | 'close' | 'normal' | 'loose';

/** A hole that a screw passes through freely. */
export interface ClearanceHole {
  readonly fit: ClearanceFit;
  readonly diameterMm: number;
  /** Name of the drill that the standard gives for it. */
  readonly drill: string;
  readonly source: string;
  readonly status: RowStatus;
}

type Row = readonly [size: number, fine: number, medium: number, coarse: number];

// ISO 273:1979, mm. M1 to M16 read on a published table, except M1.8 and M4.5; those and all above M16 from memory.
const metricRows: readonly Row[] = [
  [1, 1.1, 1.2, 1.3],
  [1.2, 1.3, 1.4, 1.5],
  [1.4, 1.5, 1.6, 1.8],
  [1.6, 1.7, 1.8, 2],
  [1.8, 2, 2.1, 2.2],
  [2, 2.2, 2.4, 2.6],
  [2.5, 2.7, 2.9, 3.1],
  [3, 3.2, 3.4, 3.6],
  [3.5, 3.7, 3.9, 4.2],
  [4, 4.3, 4.5, 4.8],
  [4.5, 4.8, 5, 5.3],
  [5, 5.3, 5.5, 5.8],
  [6, 6.4, 6.6, 7],
  [7, 7.4, 7.6, 8],
  [8, 8.4, 9, 10],
  [10, 10.5, 11, 12],
  [12, 13, 13.5, 14.5],
  [14, 15, 15.5, 16.5],
  [16, 17, 17.5, 18.5],
  [18, 19, 20, 21],
  [20, 21, 22, 24],
  [22, 23, 24, 26],
  [24, 25, 26, 28],
  [27, 28, 30, 32],
  [30, 31, 33, 35],
  [33, 34, 36, 38],
  [36, 37, 39, 42],
  [39, 40, 42, 45],
  [42, 43, 45, 48],
  [45, 46, 48, 52],
  [48, 50, 52, 56],
  [52, 54, 56, 62],
  [56, 58, 62, 66],
  [60, 62, 66, 70],
  [64, 66, 70, 74],
];

const isReadMetric = (size: number): boolean => size <= 16 && size !== 1.8 && size !== 4.5;

/** Which of a row's three holes were read on a page. */
type Read = 'all' | 'normal and loose' | 'loose';
type InchRow = readonly [majorInch: number, close: string, normal: string, loose: string, read: Read];

// ASME B18.2.8-1999, nominal drills. Number 8 to 1 in read on a published table of all three fits; the loose holes of all
// sizes and the normal ones of numbers 0 to 6 on a handbook's page; the rest from memory. The standard has no number 12.
const inchRows: readonly InchRow[] = [
  [0.06, 'No 51', 'No 48', '3/32', 'normal and loose'],
  [0.073, 'No 46', 'No 43', 'No 37', 'normal and loose'],
  [0.086, '3/32', 'No 38', 'No 32', 'normal and loose'],
  [0.099, 'No 36', 'No 32', 'No 30', 'normal and loose'],
  [0.112, 'No 31', 'No 30', 'No 27', 'normal and loose'],
  [0.125, '9/64', '5/32', '11/64', 'normal and loose'],
  [0.138, 'No 23', 'No 18', 'No 13', 'normal and loose'],
  [0.164, 'No 15', 'No 9', 'No 3', 'all'],
  [0.19, 'No 5', 'No 2', 'B', 'all'],
  [0.25, '17/64', '9/32', '19/64', 'all'],
  [0.3125, '21/64', '11/32', '23/64', 'all'],
  [0.375, '25/64', '13/32', '27/64', 'all'],
  [0.4375, '29/64', '15/32', '31/64', 'all'],
  [0.5, '17/32', '9/16', '39/64', 'all'],
  [0.625, '21/32', '11/16', '47/64', 'all'],
  [0.75, '25/32', '13/16', '29/32', 'all'],
  [0.875, '29/32', '15/16', '1-1/32', 'all'],
  [1, '1-1/32', '1-3/32', '1-5/32', 'all'],
  [1.125, '1-5/32', '1-7/32', '1-5/16', 'loose'],
  [1.25, '1-9/32', '1-11/32', '1-7/16', 'loose'],
  [1.375, '1-7/16', '1-1/2', '1-39/64', 'loose'],
  [1.5, '1-9/16', '1-5/8', '1-47/64', 'loose'],
];

const readOf: Readonly<Record<Read, readonly boolean[]>> = {
  all: [true, true, true],
  'normal and loose': [false, true, true],
  loose: [false, false, true],
};

const statusOf = (isRead: boolean | undefined): RowStatus => (isRead ? 'read' : 'from memory');

/** Clearance holes of ISO 273 for a metric screw, fine to coarse; none for a diameter in mm that it does not list. */
export function metricClearance(majorMm: number): readonly ClearanceHole[] {
  const row = metricRows.find(([size]) => size === majorMm);
  if (row === undefined) return [];
  return (['fine', 'medium', 'coarse'] as const).map((fit, i) => ({
    fit,
    diameterMm: row[i + 1]!,
    drill: `${row[i + 1]!} mm`,
    source: 'ISO 273:1979',
    status: statusOf(isReadMetric(majorMm)),
  }));
}

/**
 * Clearance holes of ASME B18.2.8 for an inch screw, close to loose; none for a major diameter in mm that it does not list.
 * The hole has the diameter of the standard's drill.
 */
export function inchClearance(majorMm: number): readonly ClearanceHole[] {
  const row = inchRows.find(([majorInch]) => Math.abs(majorInch * 25.4 - majorMm) < 1e-6);
  if (row === undefined) return [];
  const [, close, normal, loose, read] = row;
  return (['close', 'normal', 'loose'] as const).map((fit, i) => {
    const drill = [close, normal, loose][i]!;
    const name = drill.includes('/') ? `${drill} in` : drill;
    return {
      fit,
      diameterMm: drillCalled(name)!.diameterMm,
      drill: name,
      source: 'ASME B18.2.8-1999',
      status: statusOf(readOf[read][i]),
    };
  });
}
