import { formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';

/** A hundredth of a millimetre, half a thousandth of an inch: no margin of a set-up is known nearer. */
const STEP_MM: Readonly<Record<LengthUnit, number>> = { mm: 0.01, in: 0.0127 };

/** A length as a margin is told: rounded towards nothing, so that it never promises more than there is. */
export function roundedLength(mm: number, unit: LengthUnit): string {
  const step = STEP_MM[unit];
  const steps = mm / step;
  // What is a step but for the rounding of float64 stays that step.
  const near = Math.round(steps);
  const whole = Math.abs(steps - near) < 1e-6 ? near : Math.floor(steps);
  return formatQuantity(whole * step, 'length', { unit });
}
