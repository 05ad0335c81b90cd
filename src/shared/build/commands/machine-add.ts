import type { MachineId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { genericMachine, genericOrigin } from '../../tables/generic-machines.ts';
import type { MachineType } from '../../tables/machine-figures.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { machinesOf, settingsOf } from '../look-up.ts';
import { defaultMachine, type Machine } from '../machine.ts';
import { machineAsKept } from '../machine-as-kept.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';

export type MachineFields = Partial<Omit<Machine, 'kind' | 'id' | 'order'>>;

export interface MachineAdd {
  readonly type: MachineType;
  /** Id of a row of `genericMachines` to begin with. */
  readonly generic?: string;
  /** Fields that differ; `figures` are put over those of the generic row. Without a name it gets a free one. */
  readonly set?: MachineFields;
  /** The machine to stand before; otherwise it goes to the end of the list. */
  readonly before?: MachineId;
}

/** Adds a machine. Its lengths are kept with their unit, for a machine goes from build to build. */
export default defineCommand<MachineAdd>({
  id: 'machine-add',
  run(build, { type, generic, set = {}, before }, { newId }) {
    const machines = machinesOf(build);
    const row = generic === undefined ? undefined : genericMachine(generic);
    if (generic !== undefined && row?.type !== type) {
      return err({ code: 'generic-machine-unknown', data: { given: generic, type } });
    }
    const taken = machines.map((machine) => machine.name);
    const { orders, moved } = placeInList(machines, before);
    const name = set.name?.trim() || freeName(row?.name ?? type, taken);
    const written: Machine = {
      ...defaultMachine(newId('machine'), name, type, orders[0]!),
      ...(row ? { generic: true, note: genericOrigin } : {}),
      ...set,
      type,
      name,
      figures: { ...row?.figures, ...set.figures },
    };
    const machine = machineAsKept(written, settingsOf(build).lengthUnit);
    if (!machine.ok) return machine;
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(machine.value);
    return ok({ diff: draft.diff(), label: `add machine ${name}` });
  },
});
