import type { Machine } from '../build/machine.ts';
import { describeProblem } from '../formula/messages.ts';
import { parseWritten } from '../formula/parse-written.ts';
import type { Kind, LengthUnit } from '../quantity/kind.ts';
import { type FigureMeasure, type MachineFigure, machineFigures } from '../tables/machine-figures.ts';
import { type Rate, type RateProblem, readRate } from './read-rate.ts';

/** A figure that cannot be used as it is written, or can hardly be meant. */
export interface FigureProblem {
  /** Of `machine-figures.ts`; of a point of the bed `bed/3/across`. */
  readonly key: string;
  /** What is wrong and what to do, whole sentences. */
  readonly problem: string;
}

/** A point of the bed's outline, mm: to the back from the line of centres, and down from it. */
export interface BedPoint {
  readonly acrossMm: number;
  readonly downMm: number;
}

/** A machine with its texts read. What is not written is in neither list: it is unknown. */
export interface MachineFiguresRead {
  /** By key: mm, kg, °C, turns or strokes per minute, kW, litres, m/min. */
  readonly values: ReadonlyMap<string, number>;
  readonly problems: readonly FigureProblem[];
  /** Figures that read well and contradict one another; `key` is the one named first. */
  readonly doubts: readonly FigureProblem[];
  /** From front to back; undefined where none is given, or a point of it cannot be read. */
  readonly bed: readonly BedPoint[] | undefined;
}

const kinds: Readonly<Partial<Record<FigureMeasure, Kind>>> = {
  length: 'length',
  mass: 'mass',
  temperature: 'temperature',
};
const rates: Readonly<Partial<Record<FigureMeasure, Rate>>> = {
  rpm: 'rpm',
  power: 'power',
  rate: 'power',
  volume: 'volume',
  speed: 'speed',
  count: 'count',
};

/** −273.15 °C. */
const ABSOLUTE_ZERO_C = -273.15;

type Read = { readonly value: number | undefined } | { readonly problem: string };

function readOne(text: string, figure: MachineFigure, lengthUnit: LengthUnit): Read {
  const rate = rates[figure.measures];
  if (rate !== undefined) {
    const read = readRate(text, rate);
    return read.ok ? { value: read.value } : { problem: wordsOfRate(text, read.error) };
  }
  const read = readPlain(text, kinds[figure.measures] ?? 'number', lengthUnit);
  if (!('value' in read) || read.value === undefined) return read;
  if (figure.measures === 'temperature') {
    return read.value > ABSOLUTE_ZERO_C ? read : { problem: `“${text.trim()}” is below the coldest there is.` };
  }
  if (read.value > 0 || (read.value === 0 && figure.zero)) return read;
  return {
    problem: figure.zero
      ? `“${text.trim()}” is below nought. Write nought or more.`
      : `“${text.trim()}” is not above nought. Write what it measures, or leave it empty where it is not known.`,
  };
}

function readPlain(text: string, kind: Kind, lengthUnit: LengthUnit): Read {
  const read = parseWritten(text, { kind, lengthUnit });
  if (!read.ok) return { problem: describeProblem(read.error) ?? `“${text.trim()}” cannot be read.` };
  switch (read.value.is) {
    case 'empty':
      return { value: undefined };
    case 'quantity':
      return { value: read.value.value };
    case 'formula':
      return { problem: `“${text.trim()}” is no plain number. Write one with its unit, such as ${examples[kind]}.` };
  }
}

const examples: Readonly<Record<Kind, string>> = {
  length: '250 mm',
  mass: '2.5 kg',
  temperature: '1100 °C',
  angle: '30°',
  number: '4',
};

function wordsOfRate(text: string, { code, units }: RateProblem): string {
  const given = `“${text.trim()}”`;
  switch (code) {
    case 'not-a-number':
      return `${given} is no number. Write a number${units === 'a number' ? '' : ` in ${units}`}.`;
    case 'unknown-unit':
      return `The unit of ${given} is not known here. Write ${units}.`;
    case 'not-positive':
      return `${given} is not above nought. Write what it is, or leave it empty where it is not known.`;
  }
}

/** Pairs of which the first is never more than the second. */
const ascending: readonly (readonly [lesser: string, greater: string])[] = [
  ['swingOverCrossSlide', 'swingOverSaddle'],
  ['swingOverCrossSlide', 'swingOverBed'],
  ['swingOverSaddle', 'swingOverBed'],
  ['swingOverBed', 'swingInGap'],
  ['tailOverhang', 'barrelTravel'],
  ['threeJawDepth', 'threeJawLength'],
  ['threeJawLeast', 'threeJawMost'],
  ['threeJawInsideLeast', 'threeJawInsideMost'],
  ['fourJawDepth', 'fourJawLength'],
  ['fourJawLeast', 'fourJawMost'],
  ['steadyLeast', 'steadyMost'],
  ['slowestRpm', 'fastestRpm'],
  ['slowestStrokes', 'fastestStrokes'],
  ['slowestBand', 'fastestBand'],
  ['chuckLeast', 'chuckMost'],
  ['daylight', 'daylightBase'],
];

function doubtsOf(machine: Machine, values: ReadonlyMap<string, number>): readonly FigureProblem[] {
  const labels = new Map(machineFigures[machine.type].map(({ key, label }) => [key, label]));
  return ascending.flatMap(([lesser, greater]) => {
    const [less, more] = [values.get(lesser), values.get(greater)];
    if (less === undefined || more === undefined || less <= more) return [];
    const written = `${labels.get(lesser)} (${machine.figures[lesser]?.trim()}) is more than ${lowerFirst(labels.get(greater) ?? greater)} (${machine.figures[greater]?.trim()})`;
    return [{ key: lesser, problem: `${written}. Put a rule to both.` }];
  });
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function readBed(machine: Machine, lengthUnit: LengthUnit, problems: FigureProblem[]): readonly BedPoint[] | undefined {
  if (machine.bed.length === 0) return undefined;
  const before = problems.length;
  const points = machine.bed.map((point, i) => {
    const [acrossMm, downMm] = (['across', 'down'] as const).map((end) => {
      const read = readPlain(point[end], 'length', lengthUnit);
      if ('value' in read && read.value !== undefined) return read.value;
      const problem =
        'problem' in read ? read.problem : 'The point has no length here. Write it, or take the point out.';
      problems.push({ key: `bed/${i}/${end}`, problem });
      return Number.NaN;
    });
    return { acrossMm: acrossMm!, downMm: downMm! };
  });
  for (const [i, { acrossMm }] of points.entries()) {
    const last = points[i - 1]?.acrossMm;
    if (last === undefined || !(acrossMm < last)) continue;
    const problem = 'The point lies before the one above it. Write the points in order from front to back.';
    problems.push({ key: `bed/${i}/across`, problem });
  }
  if (points.length === 1) {
    problems.push({ key: 'bed/0/across', problem: 'One point is no outline. Write at least two, or take it out.' });
  }
  return problems.length === before ? points : undefined;
}

const known: Readonly<Record<LengthUnit, WeakMap<Machine, MachineFiguresRead>>> = {
  mm: new WeakMap(),
  in: new WeakMap(),
};

/**
 * Reads the figures of a machine by its type; figures that its type does not have are passed over. Read once for each record.
 *
 * @param lengthUnit the unit of lengths written without one
 */
export function readFigures(machine: Machine, lengthUnit: LengthUnit): MachineFiguresRead {
  const before = known[lengthUnit].get(machine);
  if (before) return before;
  const values = new Map<string, number>();
  const problems: FigureProblem[] = [];
  for (const figure of machineFigures[machine.type]) {
    const text = machine.figures[figure.key];
    if (text === undefined) continue;
    const read = readOne(text, figure, lengthUnit);
    if ('problem' in read) problems.push({ key: figure.key, problem: read.problem });
    else if (read.value !== undefined) values.set(figure.key, read.value);
  }
  const bed = readBed(machine, lengthUnit, problems);
  const result: MachineFiguresRead = { values, problems, doubts: doubtsOf(machine, values), bed };
  known[lengthUnit].set(machine, result);
  return result;
}
