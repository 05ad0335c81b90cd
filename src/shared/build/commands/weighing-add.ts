import type { PatternId } from '../../base/ids.ts';
import { secondsOfMoment } from '../../base/moment.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import type { Pattern, Weighing } from '../pattern.ts';
import { labelOfPlan } from '../plan-guards.ts';

export interface WeighingAdd {
  readonly pattern: PatternId;
  /** As written: `1.234 kg`. */
  readonly mass: string;
  /** When it was, ISO 8601 in UTC; without it: now. */
  readonly at?: string;
  /** Where it stood to dry; may be empty. */
  readonly where?: string;
}

/** Weighings from the first to the last; one whose moment cannot be read, and which will be refused, first. */
export const inTime = (weighings: readonly Weighing[]): Weighing[] =>
  [...weighings].sort((a, b) => (secondsOfMoment(a.at) ?? 0) - (secondsOfMoment(b.at) ?? 0));

/** Whether two moments are the same one, however they are written. */
export const isSameMoment = (a: string, b: string): boolean =>
  a === b || (secondsOfMoment(a) ?? Number.NaN) === secondsOfMoment(b);

/** Notes what a coated pattern weighed at a moment. */
export default defineCommand<WeighingAdd>({
  id: 'weighing-add',
  run(build, { pattern: id, mass, at, where = '' }, { now }) {
    const from = recordOf(build, 'pattern', id);
    if (!from) return err({ code: 'pattern-not-found' });
    const weighing: Weighing = { at: at ?? now, mass: mass.trim(), where: where.trim() };
    if (weighing.mass === '') return err({ code: 'weighing-empty' });
    const to: Pattern = { ...from, weighings: [...from.weighings, weighing] };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const there = from.weighings.find((other) => isSameMoment(other.at, weighing.at));
    if (there) return err({ code: 'weighing-there', data: { mass: there.mass } });
    const draft = draftOf(build);
    draft.put({ ...to, weighings: inTime(to.weighings) });
    return ok({ diff: draft.diff(), label: `weigh ${labelOfPlan(build, from)}: ${shorten(weighing.mass)}` });
  },
});
