import type { PatternId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { countedPlans, labelOfPlan, releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface PatternRemove {
  readonly patterns: readonly PatternId[];
}

/** Removes patterns with all that was measured on them. Pours that used them stay, without a pattern; the label says how many. */
export default defineCommand<PatternRemove>({
  id: 'pattern-remove',
  run(build, { patterns }) {
    const gone = new Set<string>(patterns);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const labels: string[] = [];
    for (const id of gone) {
      const pattern = recordOf(build, 'pattern', id);
      if (!pattern) return err({ code: 'pattern-not-found' });
      labels.push(labelOfPlan(build, pattern));
      draft.remove(pattern.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    const what = labels.length === 1 ? labels[0] : counted(labels.length, 'pattern');
    const from = released.value.length > 0 ? ` from ${countedPlans(released.value)}` : '';
    return ok({ diff: draft.diff(), label: `remove ${what}${from}` });
  },
});
