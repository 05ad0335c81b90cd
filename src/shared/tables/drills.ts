import type { RowStatus } from './row.ts';

export const drillSeries = ['metric', 'number', 'letter', 'fraction'] as const;
export type DrillSeries = (typeof drillSeries)[number];

/** A twist drill of a standard series. */
export interface Drill {
  readonly series: DrillSeries;
  /** As it is called: `6.8 mm`, `No 7`, `F`, `21/64 in`. */
  readonly name: string;
  readonly diameterMm: number;
  readonly source: string;
  readonly status: RowStatus;
}

// Inches are counted in ten-thousandths: exact, and 1 in = 127/5 mm divides once.
const tenThousandths = (count: number): number => (count * 127) / 50_000;

const NUMBERS = 'Number drill gauge, as in the units tables of GNU Units';
const LETTERS = 'Letter drill gauge, as in the units tables of GNU Units';

// No 1 to No 80, in ten-thousandths of an inch.
const numberSizes: readonly number[] = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660,
  1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995,
  980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380,
  370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
];

// A to Z, in ten-thousandths of an inch.
const letterSizes: readonly number[] = [
  2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950, 3020, 3160, 3230, 3320, 3390, 3480,
  3580, 3680, 3770, 3860, 3970, 4040, 4130,
];

const numbers = numberSizes.map(
  (size, i): Drill => ({
    series: 'number',
    name: `No ${i + 1}`,
    diameterMm: tenThousandths(size),
    source: NUMBERS,
    status: 'read',
  }),
);

const letters = letterSizes.map(
  (size, i): Drill => ({
    series: 'letter',
    name: String.fromCharCode(65 + i),
    diameterMm: tenThousandths(size),
    source: LETTERS,
    status: 'read',
  }),
);

/** Sixty-fourths of an inch to 1-3/4 in, the thickest that ASME B18.2.8 asks for: exact by definition. */
const fractions = Array.from(
  { length: 112 },
  (_, i): Drill => ({
    series: 'fraction',
    name: `${sixtyFourths(i + 1)} in`,
    diameterMm: ((i + 1) * 127) / 320,
    source: 'Sixty-fourths of an inch',
    status: 'read',
  }),
);

/** `21/64`, `1-3/64`, `1/2`: lowest terms. */
function sixtyFourths(count: number): string {
  const whole = Math.floor(count / 64);
  let [numerator, denominator] = [count % 64, 64];
  if (numerator === 0) return String(whole);
  while (numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  return `${whole > 0 ? `${whole}-` : ''}${numerator}/${denominator}`;
}

/** Hundredths of a millimetre from..to in equal steps. */
const steps = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

const metricOf =
  (source: string, status: RowStatus) =>
  (hundredths: number): Drill => ({
    series: 'metric',
    name: `${hundredths / 100} mm`,
    diameterMm: hundredths / 100,
    source,
    status,
  });

// The rule of BS 328 read on a published list of drill sizes; it counts 230 sizes, as these do.
const listedMetric: readonly number[] = [
  ...steps(20, 90, 10).flatMap((tenth) => [tenth, tenth + 2, tenth + 5, tenth + 8]),
  ...steps(100, 295, 5),
  ...steps(300, 1390, 10),
  ...steps(1400, 2575, 25),
];
const largeMetric: readonly number[] = [...steps(2600, 6000, 50), ...steps(6100, 10_000, 100)];

const metric = [
  ...listedMetric.map(metricOf('BS 328 metric drill sizes', 'read')),
  ...largeMetric.map(metricOf('Taper shank drills above 25.75 mm, usual steps (from memory)', 'from memory')),
];

/** All drills, each series from thin to thick. */
export const drills: Readonly<Record<DrillSeries, readonly Drill[]>> = {
  metric,
  number: [...numbers].reverse(),
  letter: letters,
  fraction: fractions,
};

const byName: ReadonlyMap<string, Drill> = new Map(
  Object.values(drills).flatMap((series) => series.map((drill) => [drill.name, drill] as const)),
);

/** The drill that is called so: `6.8 mm`, `No 7`, `F`, `21/64 in`; undefined when no series has one of that name. */
export const drillCalled = (name: string): Drill | undefined => byName.get(name);

/** A size that differs by less than this is the drill's own, in mm. */
const SAME_MM = 1e-6;
/** Beyond the ends of a series its last drill still counts when it is this near, as a share of the size. */
const NEAR_END = 0.03;

/**
 * The drills of a series next to a diameter: one when it has the size itself, else the next thinner and the next thicker,
 * nearest first. Just beyond the ends of the series the last one; none further away.
 */
export function nearestDrills(series: DrillSeries, diameterMm: number): readonly Drill[] {
  const sizes = drills[series];
  const above = sizes.findIndex((drill) => drill.diameterMm >= diameterMm - SAME_MM);
  const thicker = above < 0 ? undefined : sizes[above];
  if (thicker !== undefined && Math.abs(thicker.diameterMm - diameterMm) < SAME_MM) return [thicker];
  const thinner = above < 0 ? sizes.at(-1) : sizes[above - 1];
  const off = (drill: Drill) => Math.abs(drill.diameterMm - diameterMm);
  const beside = [thinner, thicker].filter((drill) => drill !== undefined);
  if (beside.length < 2) return beside.filter((drill) => off(drill) <= NEAR_END * diameterMm);
  // Of two equally near the thicker: it leaves the tap less to do.
  return beside.sort((a, b) => (Math.abs(off(a) - off(b)) < SAME_MM ? b.diameterMm - a.diameterMm : off(a) - off(b)));
}

/** What a text says that names a drill by number or letter. */
export type NamedDrill = { readonly drill: Drill } | { readonly unknownNumber: number };

/** Reads `No 7`, `#7`, `F`, `letter F`; undefined when the text names no drill so. Plain sizes are read elsewhere. */
export function drillNamed(text: string): NamedDrill | undefined {
  const written = text.trim();
  const number = /^(?:#|no\.?|number)\s*(\d{1,6})$/i.exec(written)?.[1];
  if (number !== undefined) {
    const drill = numbers[Number(number) - 1];
    return drill === undefined ? { unknownNumber: Number(number) } : { drill };
  }
  const letter = /^(?:letter\s*)?([a-z])$/i.exec(written)?.[1];
  return letter === undefined ? undefined : { drill: letters[letter.toUpperCase().charCodeAt(0) - 65]! };
}
