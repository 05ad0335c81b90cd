import { sizeWords } from '../machining/machine-words.ts';
import type { MachineRow, MachinesModel } from '../machining/models.ts';
import { defineView, type Scene } from '../view.ts';

/** The machines of the build in list order, with what is done on each. */
export const machinesView = defineView<null, MachinesModel>({
  open: () => {
    let last: MachinesModel | undefined;
    let rows = new Map<string, { readonly from: readonly unknown[]; readonly row: MachineRow }>();
    return ({ index }) => {
      const unit = index.settings().lengthUnit;
      const used = usersOf(index);
      const next: typeof rows = new Map();
      const list = index.machines().map((record) => {
        const own = used.get(record.id) ?? [];
        const from = [record, unit, own.map(({ setup, name }) => `${setup} ${name}`).join('\n')];
        const known = rows.get(record.id);
        const kept = known?.from.every((value, i) => value === from[i]) ? known : undefined;
        const row = kept?.row ?? { record, words: sizeWords(record, unit), used: own };
        next.set(record.id, { from, row });
        return row;
      });
      rows = next;
      const isSame =
        last?.unit === unit && last.rows.length === list.length && list.every((row, i) => row === last?.rows[i]);
      last = isSame ? last : { unit, rows: list };
      return last!;
    };
  },
});

function usersOf(index: Scene['index']): ReadonlyMap<string, MachineRow['used']> {
  const users = new Map<string, MachineRow['used'][number][]>();
  for (const part of index.parts()) {
    for (const setup of index.setupsOf(part.id)) {
      if (setup.machine === undefined) continue;
      const list = users.get(setup.machine) ?? [];
      list.push({ setup: setup.id, part: part.id, name: `${setup.name} of ${part.name}` });
      users.set(setup.machine, list);
    }
  }
  return users;
}
