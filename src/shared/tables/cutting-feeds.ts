import type { CuttingMetal } from './cutting-metals.ts';
import { type FigureRange, inInches, PRACTICE, range, type Sourced, scaled } from './cutting-row.ts';

const read = (source: string): Sourced => ({ source, status: 'read' });
const NAVY = read('US Navy training manual 14345, feeds of twist drills (the lower end for harder metals)');
const COLLEGE = read('a college’s table of lathe feeds, roughing and finishing');
const MILLS = read('a tool maker’s table, feed per tooth of end mills of 1/4 in and of 1 in');
const DEPTHS = read('a college’s table of suggested depths of cut, HSS');

/** Inches; each row reaches from the row before to `upTo`. */
const drillFeeds: readonly (readonly [upTo: number, least: number, most: number])[] = [
  [1 / 8, 0.001, 0.002],
  [1 / 4, 0.002, 0.004],
  [1 / 2, 0.004, 0.007],
  [1, 0.007, 0.015],
  [Number.POSITIVE_INFINITY, 0.015, 0.025],
];

/** Feed of a twist drill in mm per turn, by its diameter in mm. */
export function drillFeed(diameterMm: number): FigureRange {
  const inches = (diameterMm * 5) / 127;
  const [, least, most] = drillFeeds.find(([upTo]) => inches <= upTo + 1e-9)!;
  return inInches(least, most, NAVY);
}

const REAM: Sourced = { source: 'reamed at two to three times the feed of a drill', status: 'common practice' };

/** Feed of a machine reamer in mm per turn. */
export function reamFeed(diameterMm: number): FigureRange {
  const drill = drillFeed(diameterMm);
  return { ...scaled(drill, 2, REAM), most: drill.most * 3 };
}

type Pair = readonly [rough: FigureRange, finish: FigureRange];
const feeds = (rough: readonly [number, number], finish: readonly [number, number]): Pair => [
  inInches(...rough, COLLEGE),
  inInches(...finish, COLLEGE),
];
const soft = feeds([0.015, 0.025], [0.005, 0.01]);
const hard = feeds([0.01, 0.02], [0.003, 0.01]);

const turning: Readonly<Partial<Record<CuttingMetal, Pair>>> = {
  'cast aluminium': soft,
  'wrought aluminium': soft,
  magnesium: soft,
  brass: feeds([0.015, 0.025], [0.003, 0.01]),
  bronze: feeds([0.015, 0.025], [0.003, 0.01]),
  copper: feeds([0.01, 0.02], [0.004, 0.008]),
  'soft grey iron': soft,
  'hard grey iron': hard,
  'mild steel': hard,
  'alloy steel': hard,
  'tool steel': hard,
  'cast steel': hard,
  'stainless steel': hard,
};

const AS_STEEL: Sourced = { source: 'taken as for mild steel', status: 'common practice' };

/** Feed of a turning, boring, shaping or planing tool in mm per turn or stroke. */
export function turningFeed(metal: CuttingMetal, finish: boolean): FigureRange {
  const row = turning[metal];
  return row ? row[finish ? 1 : 0] : scaled(hard[finish ? 1 : 0], 1, AS_STEEL);
}

/** Inches per tooth of an end mill of 1/4 in, and of one of 1 in or more. */
const perTooth: Readonly<Partial<Record<CuttingMetal, readonly [quarter: number, one: number]>>> = {
  'cast aluminium': [0.003, 0.009],
  'wrought aluminium': [0.003, 0.009],
  magnesium: [0.004, 0.01],
  'zinc alloy': [0.002, 0.01],
  brass: [0.003, 0.007],
  bronze: [0.003, 0.007],
  'hard bronze': [0.002, 0.005],
  copper: [0.003, 0.007],
  'soft grey iron': [0.003, 0.008],
  'hard grey iron': [0.002, 0.005],
  'mild steel': [0.001, 0.004],
  'alloy steel': [0.0005, 0.003],
  'stainless steel': [0.0005, 0.003],
};

const AS_HARD_IRON: Sourced = { source: 'taken as for alloy steel', status: 'common practice' };

/**
 * Feed of a milling cutter in mm per tooth: along the straight line between the table's two cutters; below 1/4 in in
 * proportion to the diameter.
 */
export function toothFeed(metal: CuttingMetal, diameterMm: number): FigureRange {
  const row = perTooth[metal];
  const [quarter, one] = row ?? perTooth['alloy steel']!;
  const inches = (diameterMm * 5) / 127;
  const feed =
    inches <= 1 / 4
      ? (quarter * inches) / (1 / 4)
      : quarter + (one - quarter) * Math.min(1, (inches - 1 / 4) / (1 - 1 / 4));
  const found = inInches(feed, feed, MILLS);
  return row ? found : scaled(found, 1, AS_HARD_IRON);
}

/** Inches. */
const depths: Readonly<Partial<Record<CuttingMetal, number>>> = {
  'cast aluminium': 0.05,
  'wrought aluminium': 0.05,
  magnesium: 0.05,
  'zinc alloy': 0.05,
  brass: 0.05,
  bronze: 0.05,
  copper: 0.05,
  'alloy steel': 0.025,
  'tool steel': 0.025,
  'stainless steel': 0.03,
  'mild steel': 0.03,
  'medium steel': 0.03,
  'cast steel': 0.03,
};

const AS_STEEL_DEPTH: Sourced = { source: 'taken as for plain steel', status: 'common practice' };

/** Depth of a roughing cut in mm, per side, on a machine of a home or school workshop. */
export function roughingDepth(metal: CuttingMetal): FigureRange {
  const row = depths[metal];
  return row === undefined ? scaled(inInches(0.03, 0.03, DEPTHS), 1, AS_STEEL_DEPTH) : inInches(row, row, DEPTHS);
}

/** Depth of the last cut, to size, in mm per side. */
export const finishingDepth: FigureRange = range(0.1, 0.3, PRACTICE);
