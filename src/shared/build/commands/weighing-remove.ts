import type { PatternId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import { labelOfPlan } from '../plan-guards.ts';
import { isSameMoment } from './weighing-add.ts';

export interface WeighingRemove {
  readonly pattern: PatternId;
  /** The moment of the weighing. */
  readonly at: string;
}

/** Strikes a weighing out of a pattern's log. */
export default defineCommand<WeighingRemove>({
  id: 'weighing-remove',
  run(build, { pattern: id, at }) {
    const from = recordOf(build, 'pattern', id);
    if (!from) return err({ code: 'pattern-not-found' });
    const struck = from.weighings.find((weighing) => isSameMoment(weighing.at, at));
    if (!struck) return err({ code: 'weighing-not-found' });
    const draft = draftOf(build);
    draft.put({ ...from, weighings: from.weighings.filter((weighing) => weighing !== struck) });
    return ok({ diff: draft.diff(), label: `strike weighing ${shorten(struck.mass)} of ${labelOfPlan(build, from)}` });
  },
});
