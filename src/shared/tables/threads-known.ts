import { metricThreadStatus, metricThreads } from './metric-threads.ts';
import type { RowStatus } from './row.ts';
import type { ThreadForm } from './threads-basic.ts';
import { numberSizeInch, unifiedThreads } from './unified-threads.ts';

/** A thread that a standard lists. */
export interface KnownThread {
  /** As one writes it: `M8`, `M8x1`, `1/4-20`, `#10-32`. */
  readonly name: string;
  readonly form: ThreadForm;
  readonly series: 'coarse' | 'fine' | 'UNC' | 'UNF';
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly source: string;
  readonly status: RowStatus;
}

// 1 in = 127/5 mm: multiplied first and divided once, the nearest float64.
const fromInches = (inches: number): number => (inches * 127) / 5;

const metric = metricThreads.flatMap(({ diameter, coarse, fine }) =>
  [coarse, ...fine].map(
    (pitch): KnownThread => ({
      name: pitch === coarse ? `M${diameter}` : `M${diameter}x${pitch}`,
      form: 'metric',
      series: pitch === coarse ? 'coarse' : 'fine',
      majorMm: diameter,
      pitchMm: pitch,
      source: 'ISO 261',
      status: metricThreadStatus(diameter, pitch)!,
    }),
  ),
);

const unified = unifiedThreads.map(
  ({ size, isNumber, majorInch, perInch, series, status }): KnownThread => ({
    name: `${isNumber ? '#' : ''}${size}-${perInch}`,
    form: 'unified',
    series,
    majorMm: fromInches(majorInch),
    pitchMm: fromInches(1) / perInch,
    source: 'ASME B1.1',
    status,
  }),
);

export const knownThreads: readonly KnownThread[] = [...metric, ...unified];

/** Threads that differ by less than this are the same, in mm: what is written in inches comes back with rounding. */
const SAME_MM = 1e-6;

/** The thread of the standards' lists with these sizes in mm; undefined when they list none. */
export const knownThread = (form: ThreadForm, majorMm: number, pitchMm: number): KnownThread | undefined =>
  knownThreads.find(
    (thread) =>
      thread.form === form &&
      Math.abs(thread.majorMm - majorMm) < SAME_MM &&
      Math.abs(thread.pitchMm - pitchMm) < SAME_MM,
  );

/** The listed threads nearest in diameter, then in pitch; only those of the same diameter where there are any. */
export function nearestThreads(
  form: ThreadForm,
  majorMm: number,
  pitchMm: number | undefined,
  most = 3,
): readonly KnownThread[] {
  const off = (thread: KnownThread) => Math.abs(thread.majorMm - majorMm);
  // Without a pitch the coarse one comes first, of two equally near diameters the thinner.
  const offPitch = (thread: KnownThread) =>
    pitchMm === undefined ? thread.majorMm - thread.pitchMm : Math.abs(thread.pitchMm - pitchMm);
  const listed = knownThreads.filter((thread) => thread.form === form);
  const same = listed.filter((thread) => off(thread) < SAME_MM);
  const among = same.length > 0 ? same : pitchMm === undefined ? listed.filter(isCoarse) : listed;
  return [...among]
    .sort((a, b) => {
      const nearer = off(a) - off(b);
      return Math.abs(nearer) < SAME_MM ? offPitch(a) - offPitch(b) : nearer;
    })
    .slice(0, most);
}

const isCoarse = ({ series }: KnownThread): boolean => series === 'coarse' || series === 'UNC';

const metricText = /^m\s*(\d{1,4}(?:[.,]\d{1,4})?)(?:\s*[x×*]\s*(\d{1,3}(?:[.,]\d{1,4})?))?/i;
const inchText =
  /^(#|no\.?)?\s*(?:(\d{1,3})[\s-]+(?=\d+\/))?(\d{1,3}\/\d{1,3}|\d{0,3}\.\d{1,5}|\d{1,3})(?:["″”]|\s*in\b)?(?:\s*[-x×]\s*|\s+)?(\d{1,3})?/i;

/** Threads that a text which cannot be read as one may have meant, from the numbers in it; none when it has none. */
export function threadsLike(text: string): readonly KnownThread[] {
  const written = text.trim();
  const asMetric = metricText.exec(written);
  if (asMetric) {
    const pitch = asMetric[2] === undefined ? undefined : toNumber(asMetric[2]);
    return nearestThreads('metric', toNumber(asMetric[1]!), pitch);
  }
  const asInch = inchText.exec(written);
  if (!asInch) return [];
  const perInch = asInch[4] === undefined ? undefined : Number(asInch[4]);
  const inches = majorInches(asInch[1], Number(asInch[2] ?? 0), asInch[3]!, perInch);
  if (!Number.isFinite(inches)) return [];
  return nearestThreads('unified', fromInches(inches), perInch ? fromInches(1) / perInch : undefined);
}

function majorInches(mark: string | undefined, whole: number, size: string, perInch: number | undefined): number {
  const [numerator, denominator] = size.split('/').map(Number);
  if (denominator !== undefined) return whole + numerator! / denominator;
  if (size.includes('.')) return Number(size);
  const number = Number(size);
  // A bare 1 with a fine pitch is the number size (1-64), with a coarse one an inch (1-8).
  const isInches = mark === undefined && number === 1 && (perInch === undefined || perInch < 40);
  return isInches ? number : numberSizeInch(number);
}

const toNumber = (written: string): number => Number(written.replace(',', '.'));
