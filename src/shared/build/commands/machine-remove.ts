import type { MachineId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { countedPlans, releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface MachineRemove {
  readonly machines: readonly MachineId[];
}

/**
 * Removes machines from the build (the user's own shop keeps them). Set-ups, castings and pours that name them have no machine
 * then; the label says so.
 */
export default defineCommand<MachineRemove>({
  id: 'machine-remove',
  run(build, { machines }) {
    const gone = new Set<string>(machines);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const names: string[] = [];
    for (const id of gone) {
      const machine = recordOf(build, 'machine', id);
      if (!machine) return err({ code: 'machine-not-found' });
      names.push(machine.name);
      draft.remove(machine.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    const what = names.length === 1 ? `machine ${names[0]}` : counted(names.length, 'machine');
    const from = released.value.length > 0 ? ` from ${countedPlans(released.value)}` : '';
    return ok({ diff: draft.diff(), label: `remove ${what}${from}` });
  },
});
