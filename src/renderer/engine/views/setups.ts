import { checkOf, countWords, worstOf } from '../machining/checks.ts';
import type { SetupGroup, SetupRow } from '../machining/models.ts';
import { holdingWords } from '../machining/setup-words.ts';
import { defineView } from '../view.ts';

/** All set-ups of the build by part, in list order, each with the worst that is said of it. */
export const setupsView = defineView<null, readonly SetupGroup[]>({
  open: () => {
    let rows = new Map<string, { readonly from: readonly unknown[]; readonly row: SetupRow }>();
    let groups: readonly SetupGroup[] = [];
    return (scene) => {
      const { index } = scene;
      const next: typeof rows = new Map();
      const list = index.parts().flatMap((part, i): readonly SetupGroup[] => {
        const own = index.setupsOf(part.id).map((record) => {
          const check = checkOf(scene, record);
          const machine = record.machine === undefined ? undefined : index.machine(record.machine)?.name;
          const from = [record, check, machine];
          const known = rows.get(record.id);
          const kept = known?.from.every((value, k) => value === from[k]) ? known : undefined;
          const row: SetupRow = kept?.row ?? {
            record,
            machine,
            holding: holdingWords[record.holding.as],
            state: worstOf(check),
            words: countWords(check),
          };
          next.set(record.id, { from, row });
          return row;
        });
        const before = groups[i];
        const isSame =
          before?.part === part.id &&
          before.name === part.name &&
          before.rows.length === own.length &&
          own.every((row, k) => row === before.rows[k]);
        return [isSame ? before : { part: part.id, name: part.name, rows: own }];
      });
      rows = next;
      if (list.length !== groups.length || list.some((group, i) => group !== groups[i])) groups = list;
      return groups;
    };
  },
});
