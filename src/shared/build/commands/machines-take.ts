import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { machinesOf, recordOf, settingsOf } from '../look-up.ts';
import type { Machine } from '../machine.ts';
import { machineAsKept } from '../machine-as-kept.ts';
import { counted } from '../names.ts';
import { placeInList } from '../place-in-list.ts';

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
      const machine = machineAsKept({ ...given, order: there?.order ?? orders[added++]! }, lengthUnit);
      if (!machine.ok) return machine;
      draft.put(machine.value);
    }
    const what = taken.length === 1 ? `machine ${first.name}` : counted(taken.length, 'machine');
    return ok({ diff: draft.diff(), label: `take ${what} from the shop` });
  },
});
