import type { Kind } from '../quantity/kind.ts';

/**
 * The unit of a value inside a formula: powers of length, angle, mass and temperature packed into one integer, so that
 * multiplying values is adding units and two units agree exactly when the integers are equal. Each power is counted in
 * sixtieths (roots of roots stay whole) and has twelve bits of its own, sign included.
 */
export type UnitPower = number;

const WHOLE = 60;
const BASE = 4096;
const LARGEST = 2047;

export const NO_UNIT: UnitPower = 0;
const LENGTH: UnitPower = WHOLE;
export const ANGLE: UnitPower = WHOLE * BASE;
const MASS: UnitPower = WHOLE * BASE ** 2;
const TEMPERATURE: UnitPower = WHOLE * BASE ** 3;

/** In the order of `kinds`. */
export const unitPowers: readonly UnitPower[] = [NO_UNIT, LENGTH, ANGLE, MASS, TEMPERATURE];

export const unitOfKind = (kind: Kind): UnitPower => {
  switch (kind) {
    case 'number':
      return NO_UNIT;
    case 'length':
      return LENGTH;
    case 'angle':
      return ANGLE;
    case 'mass':
      return MASS;
    case 'temperature':
      return TEMPERATURE;
  }
};

/** Powers of length, angle, mass and temperature in sixtieths. */
function unpack(unit: UnitPower): number[] {
  const powers: number[] = [];
  let rest = unit;
  for (let i = 0; i < 4; i++) {
    // The digit nearest to zero: a power may be negative.
    const digit = rest - BASE * Math.round(rest / BASE);
    powers.push(digit);
    rest = (rest - digit) / BASE;
  }
  return powers;
}

/** @returns the unit raised to a power; undefined when a power in it becomes too high or no sixtieth. */
export function raise(unit: UnitPower, exponent: number): UnitPower | undefined {
  let raised = 0;
  let place = 1;
  for (const digit of unpack(unit)) {
    const power = digit * exponent;
    const nearest = Math.round(power);
    // A third written as 1/3 is no exact third of sixty.
    if (Math.abs(power - nearest) > 1e-9 || Math.abs(nearest) > LARGEST) return undefined;
    raised += nearest * place;
    place *= BASE;
  }
  return raised;
}

/** @returns the unit of a product (`sign` 1) or a quotient (`sign` -1); undefined when a power in it becomes too high. */
export function combine(a: UnitPower, b: UnitPower, sign: 1 | -1): UnitPower | undefined {
  if (b === NO_UNIT) return a;
  // Lengths only, as nearly always.
  if (Math.abs(a) <= LARGEST && Math.abs(b) <= LARGEST && Math.abs(a + sign * b) <= LARGEST) return a + sign * b;
  const left = unpack(a);
  const right = unpack(b);
  if (left.some((power, i) => Math.abs(power + sign * right[i]!) > LARGEST)) return undefined;
  return a + sign * b;
}

const names = ['length', 'angle', 'mass', 'temperature'] as const;

/** The unit in words for a sentence: `a length`, `an area`, `a number without a unit`, `length^4`. */
export function describeUnit(unit: UnitPower): string {
  if (unit === NO_UNIT) return 'a number without a unit';
  if (unit === LENGTH) return 'a length';
  if (unit === 2 * LENGTH) return 'an area';
  if (unit === 3 * LENGTH) return 'a volume';
  if (unit === ANGLE) return 'an angle';
  if (unit === MASS) return 'a mass';
  if (unit === TEMPERATURE) return 'a temperature';
  const powers: string[] = [];
  unpack(unit).forEach((sixtieths, i) => {
    if (sixtieths === WHOLE) powers.push(names[i]!);
    else if (sixtieths !== 0) powers.push(`${names[i]}^${Number((sixtieths / WHOLE).toFixed(4))}`);
  });
  return powers.join(' times ');
}

/** A unit to write after a number of this kind, for remedies: `mm`, `deg`. */
export const remedyUnit = (unit: UnitPower, lengthUnit: string): string => {
  if (unit === LENGTH) return lengthUnit;
  if (unit === ANGLE) return 'deg';
  if (unit === MASS) return 'kg';
  if (unit === TEMPERATURE) return '°C';
  return '';
};
