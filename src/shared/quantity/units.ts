import type { Kind, LengthUnit } from './kind.ts';

/** A unit as written. Canonical value = (number - zero) · times / per; two factors keep exact definitions exact. */
export interface Unit {
  readonly kind: Kind;
  readonly times: number;
  readonly per: number;
  /** Where its scale's zero stands, in the unit itself; only temperatures have one other than 0. */
  readonly zero: number;
  /** The system a length is written in. */
  readonly system: LengthUnit | undefined;
}

const unit = (kind: Kind, times: number, per: number, system?: LengthUnit, zero = 0): Unit => ({
  kind,
  times,
  per,
  zero,
  system,
});

// 1 in = 25.4 mm = 127/5 mm exactly; 1 lb = 0.453 592 37 kg exactly (international yard and pound agreement, 1959).
// Multiplying by the integer 127 and dividing once gives the nearest float64 (3/8 in = 9.525 mm); 25.4 itself has none.
const INCH_TIMES = 127;
const INCH_PER = 5;
const POUND_TIMES = 45_359_237;
const POUND_PER = 100_000_000;

const millimetre = unit('length', 1, 1, 'mm');
export const inch = unit('length', INCH_TIMES, INCH_PER, 'in');
export const degree = unit('angle', 1, 1);
export const minute = unit('angle', 1, 60);
export const celsius = unit('temperature', 1, 1);
export const fahrenheit = unit('temperature', 5, 9, undefined, 32);
const centimetre = unit('length', 10, 1, 'mm');
const metre = unit('length', 1000, 1, 'mm');
const micrometre = unit('length', 1, 1000, 'mm');
const foot = unit('length', 12 * INCH_TIMES, INCH_PER, 'in');
const thou = unit('length', INCH_TIMES, INCH_PER * 1000, 'in');
const radian = unit('angle', 180, Math.PI);
const kilogram = unit('mass', 1, 1);
const gram = unit('mass', 1, 1000);
const pound = unit('mass', POUND_TIMES, POUND_PER);
const ounce = unit('mass', POUND_TIMES, POUND_PER * 16);
const kelvin = unit('temperature', 1, 1, undefined, 273.15);

/** Every unit word, in lower case: `MM` and `Deg` are read as well. */
const units: ReadonlyMap<string, Unit> = new Map([
  ['mm', millimetre],
  ['cm', centimetre],
  ['m', metre],
  ['µm', micrometre], // the micro sign
  ['μm', micrometre], // the Greek letter
  ['um', micrometre],
  ['in', inch],
  ['inch', inch],
  ['inches', inch],
  ['ft', foot],
  ['thou', thou],
  ['deg', degree],
  ['degree', degree],
  ['degrees', degree],
  ['rad', radian],
  ['kg', kilogram],
  ['g', gram],
  ['lb', pound],
  ['lbs', pound],
  ['oz', ounce],
  ['c', celsius],
  ['degc', celsius],
  ['f', fahrenheit],
  ['degf', fahrenheit],
  ['k', kelvin],
]);

export const unitNamed = (word: string): Unit | undefined => units.get(word) ?? units.get(word.toLowerCase());

/** A number with its unit, in canonical units (mm, deg, kg, °C). */
export const toCanonical = (number: number, of: Unit): number =>
  of.per === 1 ? (number - of.zero) * of.times : ((number - of.zero) * of.times) / of.per;

/** A difference (a limit, a step) in canonical units: the zero of the scale drops out. */
export const differenceToCanonical = (number: number, of: Unit): number => (number * of.times) / of.per;

/** The unit that a bare number of this kind takes. */
export function bareUnit(kind: Kind, lengthUnit: LengthUnit): Unit | undefined {
  switch (kind) {
    case 'length':
      return lengthUnit === 'in' ? inch : millimetre;
    case 'angle':
      return degree;
    case 'mass':
      return kilogram;
    case 'temperature':
      return celsius;
    case 'number':
      return undefined;
  }
}

/** A length in inches, from mm: the nearest float64, so that 3/8 in comes back as 0.375. */
export const toInches = (mm: number): number => (mm * INCH_PER) / INCH_TIMES;
