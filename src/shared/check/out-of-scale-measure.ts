import type { Dimension } from '../build/dimension.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { DimensionFact } from './rule.ts';

export interface OutOfScale {
  readonly record: Dimension;
  readonly valueMm: number;
  readonly wouldBeMm: number;
  readonly isTooSmall: boolean;
}

/** Fewer neighbours than this say nothing about the scale of a part. Common practice, no source. */
const FEWEST = 8;
/** How many robust deviations make an outlier: the modified z-score of Iglewicz and Hoaglin (1993), from memory. */
const OUTLYING = 3.5;
/** How near the middle a value must land for the other unit to be believed. Common practice, no source. */
const AMONG = 1.5;
/** Median absolute deviation to standard deviation, for a normal spread: 1 / Φ⁻¹(3/4). */
const MAD_TO_DEVIATION = 1.4826;
/** The spread is taken as no tighter than a factor of one and a half: parts of one scale vary that much honestly. */
const TIGHTEST = Math.log(1.5);
const MM_PER_INCH = 25.4;
/** Finest division of an inch rule. */
const INCH_PARTS = 64;

/**
 * Finds values that were likely written in the wrong unit. Lengths are compared on a logarithmic scale with those of the
 * same sort (distances with distances, diameters with diameters) of the same part, by median and median absolute
 * deviation, which one wrong value among eight cannot shift. A value is named only when all three hold: it lies far out;
 * multiplied or divided by 25.4 it lies in the middle of its neighbours; and it is written as such a slip would be: too
 * small with two or more decimals on a 1/64 grid (2.375, not 2 or 2.5, which are common small steps in mm), too large in
 * inches. So a thin flange or a long shaft passes. Common practice, no source.
 */
export function outOfScale(facts: readonly DimensionFact[], lengthUnit: LengthUnit): readonly OutOfScale[] {
  const distances = facts.filter(({ record }) => record.measure.type === 'between');
  const diameters = facts.filter(({ record }) => record.measure.type === 'size' && record.measure.form === 'diameter');
  return [...amongOneSort(distances, lengthUnit), ...amongOneSort(diameters, lengthUnit)];
}

function amongOneSort(facts: readonly DimensionFact[], lengthUnit: LengthUnit): readonly OutOfScale[] {
  const sized = facts.flatMap(({ record, resolved }) =>
    resolved.value ? [{ record, isFormula: resolved.isFormula, valueMm: resolved.value }] : [],
  );
  if (sized.length < FEWEST) return [];
  const logs = sized.map(({ valueMm }) => Math.log(Math.abs(valueMm)));
  const middle = median(logs);
  const spread = Math.max(TIGHTEST, MAD_TO_DEVIATION * median(logs.map((log) => Math.abs(log - middle))));
  return sized.flatMap(({ record, isFormula, valueMm }, i) => {
    if (isFormula) return [];
    const away = (logs[i] ?? middle) - middle;
    if (Math.abs(away) <= OUTLYING * spread) return [];
    const isTooSmall = away < 0;
    const back = away + (isTooSmall ? 1 : -1) * Math.log(MM_PER_INCH);
    if (Math.abs(back) > AMONG * spread) return [];
    const looksSo = isTooSmall ? looksLikeInches(record.value) : isInInches(record.value, lengthUnit);
    if (!looksSo) return [];
    return [{ record, valueMm, wouldBeMm: isTooSmall ? valueMm * MM_PER_INCH : valueMm / MM_PER_INCH, isTooSmall }];
  });
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}

function looksLikeInches(text: string): boolean {
  const decimals = /^\s*[-+]?\d*[.,](\d{2,})\s*(?:mm)?\s*$/.exec(text)?.[1];
  if (decimals === undefined) return false;
  const steps = Number(`0.${decimals}`) * INCH_PARTS;
  // 0.0156 for 1/64 is rounded to four places.
  return Math.abs(steps - Math.round(steps)) < INCH_PARTS * 10 ** -decimals.length;
}

const isInInches = (text: string, lengthUnit: LengthUnit): boolean =>
  /["″]|\bin\b/i.test(text) || (lengthUnit === 'in' && !/[a-z]/i.test(text));
