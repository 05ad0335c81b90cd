import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { machinesOf, recordOf, settingsOf } from '../look-up.ts';
import type { Machine } from '../machine.ts';
import { counted } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { withUnits } from '../with-unit.ts';

export interface MachinesTake {
  /** Whole records, as the user's shop keeps them. */
  readonly machines: readonly Machine[];
}

/**
 * Takes machines of the user's own shop into the build: one that the build has already is replaced in its place, by its id;
 * the others go to the end of the list.
 */
export default defineCommand<MachinesTake>({
  id: 'machines-take',
  run(build, { machines }) {
    const taken = [...new Map(machines.map((machine) => [machine.id, machine])).values()];
    const [first] = taken;
    if (!first) return err({ code: 'nothing-given' });
    const list = machinesOf(build);
    const { lengthUnit } = settingsOf(build);
    const { orders } = placeInList(list, undefined, taken.length);
    const draft = draftOf(build);
    let added = 0;
    for (const given of taken) {
      const there = recordOf(build, 'machine', given.id);
      const whole = leaveOutUndefined({ ...given, order: there?.order ?? orders[added++]! });
      const machine = withUnits(whole, lengthUnit);
      const refused = whyNotKept(machine);
      if (refused) return err(refused);
      draft.put(machine);
    }
    const what = taken.length === 1 ? `machine ${first.name}` : counted(taken.length, 'machine');
    return ok({ diff: draft.diff(), label: `take ${what} from the shop` });
  },
});
