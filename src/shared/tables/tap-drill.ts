import type { RowStatus } from './row.ts';
import type { ThreadForm } from './threads-basic.ts';

/**
 * The hole to tap by the rule of the trade: major diameter less pitch, in mm. It is the rule behind the drill sizes of
 * ISO 2306 (M8: 8 − 1.25 = 6.75; the standard drill is 6.8) and leaves 77 % of the thread of 60°, all of a trapezoidal
 * one.
 */
export const holeToTap = (majorMm: number, pitchMm: number): number => majorMm - pitchMm;

/**
 * What the thread takes off the diameter at 100 %, in pitches: twice the depth that the trade counts from. Of 60° threads
 * that is 3/4 of the sharp triangle, 1.299038 P (Machinery's Handbook, tap drill sizes), deeper than the thread that
 * ISO 68-1 and ASME B1.1 cut now: counted by their 5/8 all percentages are 1.2 times as large. Of Whitworth threads it is
 * the depth of BS 84, of trapezoidal ones that of ISO 2904.
 */
const fullThread: Readonly<Record<ThreadForm, number>> = {
  metric: 0.75 * Math.sqrt(3),
  unified: 0.75 * Math.sqrt(3),
  whitworth: 2 / (3 * Math.tan((27.5 * Math.PI) / 180)),
  trapezoidal: 1,
};

/** How much of the full thread a hole of this diameter leaves, in percent; below nought when it is wider than the thread. */
export const percentOfThread = (form: ThreadForm, majorMm: number, pitchMm: number, holeMm: number): number =>
  (100 * (majorMm - holeMm)) / (fullThread[form] * pitchMm);

/** The hole in mm that leaves so many percent of the full thread. */
export const holeForPercent = (form: ThreadForm, majorMm: number, pitchMm: number, percent: number): number =>
  majorMm - (percent / 100) * fullThread[form] * pitchMm;

/** The tap drill that a published table gives for a thread. */
export interface TableTapDrill {
  /** As in the table: `6.8 mm`, `No 7`, `F`, `5/16 in`. */
  readonly drill: string;
  /** What other tables say, when they differ. */
  readonly others: string | undefined;
  readonly source: string;
  readonly status: RowStatus;
}

const METRIC = 'ISO 2306, DIN 336';
const INCH = "Machinery's Handbook, 31st ed., tap drill sizes";

// Coarse threads, mm. Read on published charts; M4.5 from memory, because the charts differ.
const metricDrills: Readonly<Record<string, number>> = {
  M1: 0.75,
  'M1.1': 0.85,
  'M1.2': 0.95,
  'M1.4': 1.1,
  'M1.6': 1.25,
  'M1.8': 1.45,
  M2: 1.6,
  'M2.2': 1.75,
  'M2.5': 2.05,
  M3: 2.5,
  'M3.5': 2.9,
  M4: 3.3,
  'M4.5': 3.7,
  M5: 4.2,
  M6: 5,
  M7: 6,
  M8: 6.8,
  M9: 7.8,
  M10: 8.5,
  M11: 9.5,
  M12: 10.2,
  M14: 12,
  M16: 14,
  M18: 15.5,
  M20: 17.5,
  M22: 19.5,
  M24: 21,
  M27: 24,
  M30: 26.5,
  M33: 29.5,
  M36: 32,
  M39: 35,
  M42: 37.5,
  M45: 40.5,
  M48: 43,
  M52: 47,
  M56: 50.5,
  M60: 54.5,
  M64: 58,
};

// Number sizes to 1/2 in and UNC to 1 in read on published charts; UNF from 9/16 in and all above 1 in from memory.
const inchDrills: Readonly<Record<string, string>> = {
  '#0-80': '3/64 in',
  '#1-64': 'No 53',
  '#1-72': 'No 53',
  '#2-56': 'No 50',
  '#2-64': 'No 50',
  '#3-48': 'No 47',
  '#3-56': 'No 45',
  '#4-40': 'No 43',
  '#4-48': 'No 42',
  '#5-40': 'No 38',
  '#5-44': 'No 37',
  '#6-32': 'No 36',
  '#6-40': 'No 33',
  '#8-32': 'No 29',
  '#8-36': 'No 29',
  '#10-24': 'No 25',
  '#10-32': 'No 21',
  '#12-24': 'No 16',
  '#12-28': 'No 14',
  '1/4-20': 'No 7',
  '1/4-28': 'No 3',
  '5/16-18': 'F',
  '5/16-24': 'I',
  '3/8-16': '5/16 in',
  '3/8-24': 'Q',
  '7/16-14': 'U',
  '7/16-20': '25/64 in',
  '1/2-13': '27/64 in',
  '1/2-20': '29/64 in',
  '9/16-12': '31/64 in',
  '9/16-18': '33/64 in',
  '5/8-11': '17/32 in',
  '5/8-18': '37/64 in',
  '3/4-10': '21/32 in',
  '3/4-16': '11/16 in',
  '7/8-9': '49/64 in',
  '7/8-14': '13/16 in',
  '1-8': '7/8 in',
  '1-12': '59/64 in',
  '1-1/8-7': '63/64 in',
  '1-1/8-12': '1-3/64 in',
  '1-1/4-7': '1-7/64 in',
  '1-1/4-12': '1-11/64 in',
  '1-3/8-6': '1-7/32 in',
  '1-3/8-12': '1-19/64 in',
  '1-1/2-6': '1-11/32 in',
  '1-1/2-12': '1-27/64 in',
};

const fromMemory: ReadonlySet<string> = new Set([
  ...['9/16-18', '5/8-18', '3/4-16', '7/8-14', '1-12', '1-1/8-7', '1-1/8-12', '1-1/4-7', '1-1/4-12'],
  ...['1-3/8-6', '1-3/8-12', '1-1/2-6', '1-1/2-12', 'M4.5'],
]);

const otherTables: Readonly<Record<string, string>> = {
  'M4.5': '3.75 mm or 3.8 mm',
  '#2-56': 'No 51',
  '#3-48': '5/64 in',
  '#5-40': 'No 39',
  '#6-32': 'No 35',
  '#12-24': 'No 17',
  '7/8-14': '51/64 in',
};

/** The published tap drill of a listed thread, by its name (`M8`, `1/4-20`); undefined when the tables have none. */
export function tableTapDrill(name: string): TableTapDrill | undefined {
  const metric = Object.hasOwn(metricDrills, name) ? metricDrills[name] : undefined;
  const drill =
    metric === undefined ? (Object.hasOwn(inchDrills, name) ? inchDrills[name] : undefined) : `${metric} mm`;
  if (drill === undefined) return undefined;
  return {
    drill,
    others: otherTables[name],
    source: metric === undefined ? INCH : METRIC,
    status: fromMemory.has(name) ? 'from memory' : 'read',
  };
}
