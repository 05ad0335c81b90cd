import type { MachineId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { machinesOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface MachineMove {
  readonly machine: MachineId;
  /** The machine to stand before; undefined: the end of the list. */
  readonly before: MachineId | undefined;
}

export default defineCommand<MachineMove>({
  id: 'machine-move',
  run(build, { machine: id, before }) {
    const machine = recordOf(build, 'machine', id);
    const diff = machine && moveInList(build, machinesOf(build), machine, before);
    if (!diff) return err({ code: 'machine-not-found' });
    return ok({ diff, label: `move machine ${machine.name}` });
  },
});
