import type { CuttingMetal } from './cutting-metals.ts';
import { type FigureRange, inFeet, PRACTICE, range, type Sourced, scaled } from './cutting-row.ts';

/** What the speed of an edge hangs on besides metal and edge. */
export const cuttingJobs = ['turn', 'drill', 'mill', 'ream', 'tap', 'countersink', 'saw'] as const;
export type CuttingJob = (typeof cuttingJobs)[number];

/** What the edge is made of. */
export type CuttingEdge = 'HSS' | 'carbide' | 'carbon steel';

const read = (source: string): Sourced => ({ source, status: 'read' });

const NAVY = read('US Navy training manual 14345, speeds of HSS twist drills');
const DRILL_MAKER = read('a drill maker’s guide, speeds of HSS drills; a drill press manual agrees');
/** Its headings are lost in the copy that was read: their order is that of the other tables, drill, lathe, mill. */
const COLLEGE = read('a college’s table of machine tool speeds, HSS (order of columns inferred)');
/** The lower end from a lathe maker's handbook for small machines, the upper end from the college's table. */
const LATHE = read('a lathe maker’s handbook to a college’s table of machine tool speeds, HSS');
const TAPS = read('a tap maker’s table, machine tapping with HSS taps');
const TEXTBOOK: Sourced = { source: 'general textbook (from memory)', status: 'from memory' };

type Speeds = Readonly<Partial<Record<CuttingMetal, FigureRange>>>;

const drilling: Speeds = {
  'cast aluminium': inFeet(200, 300, NAVY),
  'wrought aluminium': inFeet(200, 300, NAVY),
  magnesium: inFeet(250, 400, DRILL_MAKER),
  'zinc alloy': inFeet(300, 400, DRILL_MAKER),
  brass: inFeet(200, 300, NAVY),
  bronze: inFeet(200, 300, NAVY),
  'hard bronze': inFeet(70, 150, DRILL_MAKER),
  copper: inFeet(70, 70, COLLEGE),
  'soft grey iron': inFeet(100, 150, DRILL_MAKER),
  'hard grey iron': inFeet(70, 100, DRILL_MAKER),
  'ductile iron': inFeet(80, 90, { source: `${DRILL_MAKER.source}, malleable iron`, status: 'read' }),
  'chilled iron': inFeet(30, 40, DRILL_MAKER),
  'mild steel': inFeet(80, 110, NAVY),
  'medium steel': inFeet(70, 80, NAVY),
  'alloy steel': inFeet(50, 70, NAVY),
  'tool steel': inFeet(50, 60, DRILL_MAKER),
  'cast steel': inFeet(50, 50, COLLEGE),
  'stainless steel': inFeet(30, 40, NAVY),
};

const turning: Speeds = {
  'cast aluminium': inFeet(300, 700, LATHE),
  'wrought aluminium': inFeet(300, 700, LATHE),
  magnesium: inFeet(400, 800, COLLEGE),
  brass: inFeet(150, 500, LATHE),
  bronze: inFeet(150, 500, LATHE),
  'hard bronze': range(20, 40, TEXTBOOK),
  copper: inFeet(100, 250, LATHE),
  'soft grey iron': inFeet(80, 250, LATHE),
  'hard grey iron': inFeet(50, 150, LATHE),
  'mild steel': inFeet(90, 250, LATHE),
  'alloy steel': inFeet(40, 150, LATHE),
  'tool steel': inFeet(50, 150, LATHE),
  'cast steel': inFeet(70, 150, COLLEGE),
  'stainless steel': inFeet(60, 180, LATHE),
};

const milling: Speeds = {
  'cast aluminium': inFeet(250, 500, COLLEGE),
  'wrought aluminium': inFeet(250, 500, COLLEGE),
  magnesium: inFeet(200, 400, COLLEGE),
  brass: inFeet(150, 450, COLLEGE),
  bronze: inFeet(150, 450, COLLEGE),
  copper: inFeet(100, 200, COLLEGE),
  'soft grey iron': inFeet(80, 120, COLLEGE),
  'hard grey iron': inFeet(50, 100, COLLEGE),
  'mild steel': inFeet(70, 120, COLLEGE),
  'alloy steel': inFeet(30, 60, COLLEGE),
  'tool steel': inFeet(40, 70, COLLEGE),
  'cast steel': inFeet(80, 100, COLLEGE),
  'stainless steel': inFeet(30, 60, COLLEGE),
};

const tapping: Speeds = {
  'cast aluminium': inFeet(50, 70, TAPS),
  'wrought aluminium': inFeet(50, 70, TAPS),
  magnesium: inFeet(50, 70, TAPS),
  brass: inFeet(60, 100, TAPS),
  bronze: inFeet(50, 60, TAPS),
  'hard bronze': inFeet(30, 40, TAPS),
  copper: inFeet(60, 80, TAPS),
  'soft grey iron': inFeet(30, 60, TAPS),
  'hard grey iron': inFeet(15, 30, TAPS),
  'ductile iron': inFeet(20, 40, TAPS),
  'mild steel': inFeet(30, 50, TAPS),
  'medium steel': inFeet(20, 40, TAPS),
  'alloy steel': inFeet(15, 25, TAPS),
  'tool steel': inFeet(15, 25, TAPS),
  'stainless steel': inFeet(10, 20, TAPS),
};

const BANDSAW: Sourced = { source: 'usual speeds of metal bandsaws (from memory)', status: 'from memory' };
const sawing: Speeds = {
  'cast aluminium': range(100, 300, BANDSAW),
  'wrought aluminium': range(100, 300, BANDSAW),
  'zinc alloy': range(60, 150, BANDSAW),
  brass: range(60, 120, BANDSAW),
  bronze: range(40, 90, BANDSAW),
  'hard bronze': range(25, 50, BANDSAW),
  copper: range(50, 100, BANDSAW),
  'soft grey iron': range(30, 50, BANDSAW),
  'hard grey iron': range(20, 40, BANDSAW),
  'ductile iron': range(25, 45, BANDSAW),
  // Machinery's Handbook, 31st ed., bimetal band saw speeds with coolant, gives 270 ft/min for plain mild steel; dry it
  // takes 30 to 50 % off, and half of that for a carbon steel blade.
  'mild steel': range(25, 80, BANDSAW),
  'medium steel': range(20, 55, BANDSAW),
  'alloy steel': range(20, 50, BANDSAW),
  'tool steel': range(15, 40, BANDSAW),
  'cast steel': range(20, 50, BANDSAW),
  'stainless steel': range(15, 40, BANDSAW),
};

const FROM_DRILLING: Sourced = { source: 'taken as for drilling, on the slow side', status: 'common practice' };
const REAM = read('War Department TM 1-420: machine reaming at about half the speed of drilling');
const TAP_THIRD: Sourced = { source: 'tapped at about a third of the speed of drilling', status: 'common practice' };
const SINK_THIRD: Sourced = { source: 'at about a third of the speed of drilling', status: 'common practice' };

function withHss(metal: CuttingMetal, job: CuttingJob): FigureRange | undefined {
  const drill = drilling[metal]!;
  switch (job) {
    case 'drill':
      return drill;
    case 'turn':
      return turning[metal] ?? scaled(drill, 1, FROM_DRILLING);
    case 'mill':
      return milling[metal] ?? scaled(drill, 1, FROM_DRILLING);
    case 'ream':
      return scaled(drill, 1 / 2, REAM);
    case 'tap':
      return tapping[metal] ?? scaled(drill, 1 / 3, TAP_THIRD);
    case 'countersink':
      return scaled(drill, 1 / 3, SINK_THIRD);
    case 'saw':
      return sawing[metal];
  }
}

/** Turning with carbide where a table has it; the carbide tools of a small machine are brazed or indexed. */
const carbideTurning: Speeds = {
  'cast aluminium': range(180, 400, TEXTBOOK),
  'wrought aluminium': range(180, 400, TEXTBOOK),
  'soft grey iron': range(60, 120, TEXTBOOK),
  'mild steel': range(90, 180, TEXTBOOK),
  brass: range(120, 250, TEXTBOOK),
  'hard bronze': range(90, 150, TEXTBOOK),
};

const CARBIDE = read('carbide at twice the speed of HSS, the same tables');
const CARBON = read('carbon steel at half the speed of HSS, US Navy training manual 14345');

/**
 * Cutting speed of a metal in m/min, from the slowest that the table begins with to the fastest.
 *
 * @returns undefined where nothing is known: a saw for magnesium or chilled iron.
 */
export function cuttingSpeed(metal: CuttingMetal, job: CuttingJob, edge: CuttingEdge): FigureRange | undefined {
  const hss = withHss(metal, job);
  // A tap is led by its thread, and a band has its own edge: what they are made of changes little.
  if (hss === undefined || edge === 'HSS' || job === 'saw') return hss;
  if (edge === 'carbon steel') return scaled(hss, 1 / 2, CARBON);
  if (job === 'tap') return hss;
  return (job === 'turn' ? carbideTurning[metal] : undefined) ?? scaled(hss, 2, CARBIDE);
}

/** Of grinding: common practice and a maker of wheels (5500 to 6500 ft/min; work at 50 to 90 ft/min; 0.005 to 0.04 mm deep). */
export const grinding = {
  /** m/min at the rim of the wheel. */
  wheel: inFeet(5500, 6500, read('a maker of grinding heads: vitrified wheels')),
  /** m/min of the work, round or flat. */
  work: inFeet(50, 90, read('a maker of grinding heads: speed of the work')),
  /** mm of depth in one pass. */
  depth: range(0.005, 0.04, read('a textbook page on grinding')),
  /** Feed as a share of the width of the wheel, in one turn of the work or one stroke. */
  feedShare: range(0.4, 0.9, read('a textbook page on grinding: 0.4 to 0.6 fine, 0.6 to 0.9 rough')),
} as const satisfies Readonly<Record<string, FigureRange>>;

/** mm² of cut face in a minute with a small metal bandsaw. */
export function sawingRate(metal: CuttingMetal): FigureRange | undefined {
  const rates: Readonly<Partial<Record<CuttingMetal, number>>> = {
    'cast aluminium': 3000,
    'wrought aluminium': 3000,
    'zinc alloy': 2500,
    brass: 2000,
    bronze: 1200,
    copper: 1200,
    'soft grey iron': 1200,
    'hard grey iron': 800,
    'ductile iron': 1000,
    'mild steel': 1000,
    'medium steel': 800,
    'hard bronze': 600,
    'cast steel': 600,
    'alloy steel': 500,
    'tool steel': 400,
    'stainless steel': 400,
  };
  const rate = rates[metal];
  return rate === undefined ? undefined : range(rate, rate, PRACTICE);
}
