import { err, ok } from '../base/result.ts';
import { coarsePitch } from '../tables/metric-threads.ts';
import { numberSizeInch, numberSizes, type UnifiedThread, unifiedThreads } from '../tables/unified-threads.ts';
import type { LengthUnit, ProblemOr } from './kind.ts';
import { inch, toCanonical } from './units.ts';

/** A thread as written. */
export interface Thread {
  readonly majorMm: number;
  readonly pitchMm: number;
  /** The system its sizes are counted in. */
  readonly system: LengthUnit;
  readonly form: 'metric' | 'trapezoidal' | 'unified' | 'whitworth';
  /** `UNC`, `UNF`, … as written or as the table has it; undefined for metric threads and for sizes of no series. */
  readonly series: string | undefined;
  readonly hand: 'right' | 'left';
}

// Each anchored at both ends and without repeats inside repeats: they take linear time on any text.
const number = String.raw`(\d+(?:[.,]\d+)?|[.,]\d+)`;
const tail = String.raw`(?:\s*-?\s*[1-9][A-Ha-h](?:[1-9][A-Ha-h])?)?(?:\s*-?\s*(LH|RH))?`;
const metric = new RegExp(String.raw`^M\s*${number}(?:\s*[x×*]\s*${number})?${tail}$`, 'i');
const trapezoidal = new RegExp(String.raw`^Tr\s*${number}\s*[x×*]\s*${number}(?:\s*\(?P\s*${number}\)?)?${tail}$`, 'i');
const size = String.raw`(#\s*\d{1,3}|No\.?\s*\d{1,3}|\d+[\s-]+\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)`;
const mark = String.raw`(\s*["″”]|\s*in\.?(?![a-z]))?`;
const pitch = String.raw`(?:\s*[-x×]\s*(\d{1,3})|\s+(\d{1,3}))?(?:\s*tpi)?`;
const inches = new RegExp(`^${size}${mark}${pitch}(?:\\s*-?\\s*(UNC|UNF|UNEF|UNS|UN|BSW|BSF))?${tail}$`, 'i');
const beginsLikeThread = /^(?:M\s*\d|Tr\s*\d|#|No\.?\s*\d)/i;

/**
 * Reads a thread: `M8`, `M8x1`, `Tr 20x4`, `1/4-20`, `1/4-20 UNC`, `#10-32`, `No 10-32`, `10-32`, with a class and `LH`
 * behind it if wanted. A metric size without a pitch has its coarse one (ISO 261), a unified size with a series but no
 * pitch that of the series (ASME B1.1).
 *
 * @returns undefined when the text does not look like a thread at all (it may be a formula).
 */
export function parseThread(text: string): ProblemOr<Thread> | undefined {
  const start = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  const written = text.slice(start, end);
  if (written === '' || written.length > 60) return undefined;
  const refuse = (code: string, data: Readonly<Record<string, string | number>> = {}) =>
    err({ code, start, end, data: { text: written, ...data } });

  const asMetric = metric.exec(written);
  if (asMetric) {
    const major = toNumber(asMetric[1]!);
    const pitchMm = asMetric[2] === undefined ? coarsePitch(major) : toNumber(asMetric[2]);
    if (pitchMm === undefined) return refuse('thread-no-coarse');
    if (!fits(pitchMm, major)) return refuse('thread-pitch');
    return ok({ majorMm: major, pitchMm, system: 'mm', form: 'metric', series: undefined, hand: handOf(asMetric[3]) });
  }
  const asTrapezoidal = trapezoidal.exec(written);
  if (asTrapezoidal) {
    const major = toNumber(asTrapezoidal[1]!);
    // With several starts the lead is written first and the pitch behind a P: Tr 20x8P4.
    const pitchMm = toNumber(asTrapezoidal[3] ?? asTrapezoidal[2]!);
    if (!fits(pitchMm, major)) return refuse('thread-pitch');
    const hand = handOf(asTrapezoidal[4]);
    return ok({ majorMm: major, pitchMm, system: 'mm', form: 'trapezoidal', series: undefined, hand });
  }
  const asInches = inches.exec(written);
  if (!asInches) {
    return beginsLikeThread.test(written) && !/\sof\s/i.test(written) ? refuse('thread-unreadable') : undefined;
  }
  const perInch = Number(asInches[3] ?? asInches[4] ?? Number.NaN);
  const series = asInches[5]?.toUpperCase();
  const major = majorInch(asInches[1]!, asInches[2] !== undefined, perInch, series);
  if (typeof major === 'string') return refuse(major);
  const rows = unifiedThreads.filter((row) => row.majorInch === major.inch && row.isNumber === major.isNumber);
  const found = choose(rows, perInch, series);
  if (found === 'mismatch') {
    const listed = rows.find((row) => row.series === series)!.perInch;
    return refuse('thread-series', { series: series!, listed });
  }
  const threads = Number.isNaN(perInch) ? found?.perInch : perInch;
  if (threads === undefined) return refuse('thread-without-pitch');
  if (!fits(1 / threads, major.inch)) return refuse('thread-pitch');
  return ok({
    majorMm: toCanonical(major.inch, inch),
    pitchMm: toCanonical(1, inch) / threads,
    system: 'in',
    form: series?.startsWith('BS') ? 'whitworth' : 'unified',
    series: series ?? found?.series,
    hand: handOf(asInches[6]),
  });
}

const toNumber = (written: string): number => Number(written.replace(',', '.'));

/** A pitch as large as the thread itself is a slip of the pen. */
const fits = (pitchOf: number, major: number): boolean => Number.isFinite(pitchOf) && pitchOf > 0 && pitchOf < major;

const handOf = (written: string | undefined): 'right' | 'left' => (written?.toUpperCase() === 'LH' ? 'left' : 'right');

/** The row of the tables that is meant, if there is one. */
function choose(
  rows: readonly UnifiedThread[],
  perInch: number,
  series: string | undefined,
): UnifiedThread | undefined | 'mismatch' {
  if (series === undefined) return rows.find((row) => row.perInch === perInch);
  const row = rows.find((candidate) => candidate.series === series);
  return row !== undefined && !Number.isNaN(perInch) && row.perInch !== perInch ? 'mismatch' : row;
}

/** The major diameter in inches, or the code of what is wrong with the size. */
function majorInch(
  written: string,
  hasInchMark: boolean,
  perInch: number,
  series: string | undefined,
): { readonly inch: number; readonly isNumber: boolean } | string {
  const numbered = /^(?:#|No\.?)\s*(\d+)$/i.exec(written);
  if (numbered) {
    const size = Number(numbered[1]);
    return numberSizes.includes(size) ? { inch: numberSizeInch(size), isNumber: true } : 'thread-number';
  }
  const mixed = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(written);
  if (mixed) {
    const inch = Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
    return Number.isFinite(inch) ? { inch, isNumber: false } : 'thread-unreadable';
  }
  const value = Number(written);
  if (!Number.isInteger(value) || hasInchMark) return { inch: value, isNumber: false };
  // A bare whole number is a number size or inches (1-64 is the first, 1-8 the second): the tables tell which.
  const asListed = unifiedThreads.find(
    (row) =>
      row.size === written &&
      (Number.isNaN(perInch) || row.perInch === perInch) &&
      (series === undefined || row.series === series),
  );
  if (asListed !== undefined && !Number.isNaN(perInch))
    return { inch: asListed.majorInch, isNumber: asListed.isNumber };
  if (Number.isNaN(perInch) && series === undefined) return 'thread-without-pitch';
  return 'thread-number-or-inch';
}
