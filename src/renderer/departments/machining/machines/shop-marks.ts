import type { Machine } from '../../../../shared/build/machine.ts';
import { machineFigure } from '../../../../shared/tables/machine-figures.ts';
import type { Shop } from './shop.ts';

/** How a machine of the build stands to the user's own shop. */
export type ShopMark = 'same' | 'differs' | 'not in shop' | 'unread';

export function markOf(machine: Machine, { machines }: Pick<Shop, 'machines'>): ShopMark {
  if (machines === undefined) return 'unread';
  const own = machines.find(({ id }) => id === machine.id);
  if (own === undefined) return 'not in shop';
  return differences(machine, own).length === 0 ? 'same' : 'differs';
}

/** One thing in which a machine of the build and the shop's differ. */
export interface Difference {
  readonly label: string;
  readonly here: string;
  readonly there: string;
}

/** In what the build's machine (`here`) and the shop's (`there`) differ, as written; their order in lists is no difference. */
export function differences(here: Machine, there: Machine): readonly Difference[] {
  const found: Difference[] = [];
  const add = (label: string, a: string, b: string) => {
    if (a !== b) found.push({ label, here: a, there: b });
  };
  add('Name', here.name, there.name);
  add('Type', here.type, there.type);
  for (const key of new Set([...Object.keys(here.figures), ...Object.keys(there.figures)])) {
    add(machineFigure(here.type, key)?.label ?? key, here.figures[key] ?? '', there.figures[key] ?? '');
  }
  const outline = ({ bed }: Machine) => bed.map(({ across, down }) => `${across}, ${down}`).join('; ');
  add('Bed', outline(here), outline(there));
  add('Generic', here.generic ? 'yes' : 'no', there.generic ? 'yes' : 'no');
  add('Note', here.note, there.note);
  return found;
}
