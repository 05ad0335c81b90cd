import { formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';

/** A hundredth of a millimetre, a thousandth of an inch: set-ups are known no nearer. */
const STEP_MM: Readonly<Record<LengthUnit, number>> = { mm: 0.01, in: 0.0254 };

/** Which way a length is rounded: what is free is told as no more than it is, what is wanting as no less. */
export type Rounding = 'near' | 'down' | 'up';

/** A length of a set-up as it is told. */
export function roundedLength(mm: number, unit: LengthUnit, rounding: Rounding = 'near'): string {
  const step = STEP_MM[unit];
  const steps = mm / step;
  const near = Math.round(steps);
  // What is a step but for the rounding of float64 stays that step.
  const isNear = rounding === 'near' || Math.abs(steps - near) < 1e-6;
  const whole = isNear ? near : rounding === 'down' ? Math.floor(steps) : Math.ceil(steps);
  return formatQuantity(whole * step, 'length', { unit });
}

/** What is left over, or wanting: `+4.1 mm`, `−2.47 mm`. */
export const marginWords = (mm: number, unit: LengthUnit): string =>
  mm < 0 ? `−${roundedLength(-mm, unit, 'up')}` : `+${roundedLength(mm, unit, 'down')}`;

/** The same in a sentence. */
export const clearanceWords = (mm: number, unit: LengthUnit): string =>
  mm < 0 ? `hits by ${roundedLength(-mm, unit, 'up')}` : `${roundedLength(mm, unit, 'down')} clear`;
