import type { Kind, LengthUnit } from './kind.ts';
import type { Limits } from './parse-limits.ts';
import { epsilonOf } from './tolerance.ts';
import { toInches } from './units.ts';

export interface FormatOptions {
  /** System that lengths are shown in; other kinds ignore it. */
  readonly unit: LengthUnit;
  /** Most decimals shown; {@link usualDecimals} when left out. */
  readonly decimals?: number;
  /** Show the number alone, without its unit. */
  readonly bare?: boolean;
  /**
   * Never more than those decimals: what is too small for them reads 0. For results of many roundings, such as the centre
   * of a solid, whose further figures mean nothing.
   */
  readonly firm?: boolean;
}

/** What is shown for a value that there is none of: NaN and infinity never reach the screen. */
const NO_VALUE = '—';

/** Decimals that a workshop reads: a thousandth of a millimetre, a tenth of a thou, about four seconds of arc, a gram. */
export function usualDecimals(kind: Kind, unit: LengthUnit): number {
  switch (kind) {
    case 'length':
      return unit === 'mm' ? 3 : 4;
    case 'angle':
    case 'mass':
      return 3;
    case 'temperature':
      return 1;
    case 'number':
      return 6;
  }
}

const suffix = (kind: Kind, unit: LengthUnit): string => {
  switch (kind) {
    case 'length':
      return ` ${unit}`;
    case 'angle':
      return '°';
    case 'mass':
      return ' kg';
    case 'temperature':
      return ' °C';
    case 'number':
      return '';
  }
};

/**
 * A quantity as the screen and the paper show it: `12.7 mm`, `0.5 in`, `30°`, `4`. No trailing zeros, no -0, never an
 * exponent. A value too small for the decimals shows its first two figures rather than 0; a length or an angle that the
 * tolerance policy counts as equal to 0 shows 0.
 *
 * @param value canonical: mm, deg, kg, °C or a number.
 */
export function formatQuantity(value: number, kind: Kind, options: FormatOptions): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const shown = kind === 'length' && options.unit === 'in' ? toInches(value) : value;
  const decimals = options.decimals ?? usualDecimals(kind, options.unit);
  const isDust = (kind === 'length' || kind === 'angle') && Math.abs(value) < epsilonOf[kind];
  const isTooSmall = options.firm === true && Math.abs(shown) < 10 ** -decimals / 2;
  const digits = formatNumber(isDust || isTooSmall ? 0 : shown, decimals);
  return options.bare === true ? digits : digits + suffix(kind, options.unit);
}

const MOST_DECIMALS = 12;

/** A number with at most so many decimals, as {@link formatQuantity} shows it. */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const magnitude = Math.abs(value);
  // Beyond 2^53 float64 has whole numbers only, and toFixed turns to exponents.
  if (magnitude >= Number.MAX_SAFE_INTEGER) return BigInt(Math.round(value)).toString();
  let places = decimals;
  while (places < MOST_DECIMALS && magnitude > 0 && magnitude < 10 ** -places / 2) places++;
  if (places > decimals) places = Math.min(places + 1, MOST_DECIMALS);
  let text = value.toFixed(places);
  if (places > 0) {
    let end = text.length;
    while (text[end - 1] === '0') end--;
    text = text.slice(0, text[end - 1] === '.' ? end - 1 : end);
  }
  return text === '-0' ? '0' : text;
}

export interface NearestFraction {
  readonly isNegative: boolean;
  readonly whole: number;
  readonly numerator: number;
  /** Lowest terms; 1 when the fraction vanishes. */
  readonly denominator: number;
  /** What the fraction leaves out, in mm: value = fraction + residue. */
  readonly residueMm: number;
  /** As the trade writes it: `1-3/8"`, `5/64"`, `2"`. */
  readonly text: string;
}

/**
 * The nearest fraction of an inch.
 * @param denominator the finest division of the rule; halves of it, quarters … are shown in lowest terms.
 */
export function nearestFraction(valueMm: number, denominator = 64): NearestFraction | undefined {
  if (!Number.isFinite(valueMm) || !Number.isInteger(denominator) || denominator < 1) return undefined;
  const parts = Math.round(toInches(Math.abs(valueMm)) * denominator);
  if (!Number.isSafeInteger(parts)) return undefined;
  const isNegative = valueMm < 0 && parts > 0;
  const whole = Math.floor(parts / denominator);
  const rest = parts - whole * denominator;
  const divisor = greatestCommonDivisor(rest, denominator);
  const numerator = rest / divisor;
  const lowest = denominator / divisor;
  const fraction =
    numerator === 0 ? `${whole}` : whole === 0 ? `${numerator}/${lowest}` : `${whole}-${numerator}/${lowest}`;
  const signed = ((isNegative ? -parts : parts) * 127) / (5 * denominator);
  return {
    isNegative,
    whole,
    numerator,
    denominator: lowest,
    residueMm: valueMm - signed,
    text: `${isNegative ? '-' : ''}${fraction}"`,
  };
}

function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** Limits as the screen shows them: `±0.1 mm`, `+0.2/−0 mm`, `+0.05/+0.02 mm`. The upper limit stands first. */
export function formatLimits(limits: Limits, kind: Kind, options: FormatOptions): string {
  if (!Number.isFinite(limits.minus) || !Number.isFinite(limits.plus)) return NO_VALUE;
  const digits = (value: number) => formatQuantity(Math.abs(value), kind, { ...options, bare: true });
  const unit = options.bare === true ? '' : suffix(kind, options.unit);
  const minus = digits(limits.minus);
  const plus = digits(limits.plus);
  if (minus === plus && limits.minus <= 0 && limits.plus >= 0) return `±${plus}${unit}`;
  const lower = limits.minus > 0 ? '+' : '−';
  const upper = limits.plus < 0 ? '−' : '+';
  return `${upper}${plus}/${lower}${minus}${unit}`;
}
