import { err, ok, type Result } from '../base/result.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { whyNotKept } from './keepable.ts';
import { leaveOutUndefined } from './leave-out-undefined.ts';
import type { Machine } from './machine.ts';
import type { Refusal } from './refusals.ts';
import { lengthWithUnit } from './with-unit.ts';
import { withMachineLengths } from './written-lengths.ts';

/**
 * A machine as a build, or the user's shop, keeps it: its lengths with their unit, because it goes from build to build.
 *
 * @param lengthUnit the unit in which lengths without one were written
 */
export function machineAsKept(given: Machine, lengthUnit: LengthUnit): Result<Machine, Refusal> {
  const whole = leaveOutUndefined(given);
  const unfit = whyNotKept(whole);
  if (unfit) return err(unfit);
  const machine = withMachineLengths(whole, (text) => lengthWithUnit(text, lengthUnit));
  // A text that was as long as it may be has no room for its unit.
  const refused = whyNotKept(machine);
  return refused ? err(refused) : ok(machine);
}
