import type { SetupId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { labelOfPlan, releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface SetupRemove {
  readonly setups: readonly SetupId[];
}

/** Removes set-ups. Operations that were done in them stay, without a set-up; the label says how many. */
export default defineCommand<SetupRemove>({
  id: 'setup-remove',
  run(build, { setups }) {
    const gone = new Set<string>(setups);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const labels: string[] = [];
    for (const id of gone) {
      const setup = recordOf(build, 'setup', id);
      if (!setup) return err({ code: 'setup-not-found' });
      labels.push(labelOfPlan(build, setup));
      draft.remove(setup.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    const what = labels.length === 1 ? labels[0] : counted(labels.length, 'set-up');
    const { length } = released.value;
    return ok({
      diff: draft.diff(),
      label: `remove ${what}${length > 0 ? ` from ${counted(length, 'operation')}` : ''}`,
    });
  },
});
