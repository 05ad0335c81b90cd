import type { MachineId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { machineFigure } from '../../tables/machine-figures.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { recordOf, settingsOf } from '../look-up.ts';
import type { Machine } from '../machine.ts';
import { machineAsKept } from '../machine-as-kept.ts';
import type { MachineFields } from './machine-add.ts';

export interface MachineSet {
  readonly machine: MachineId;
  readonly set: Omit<MachineFields, 'figures'> & {
    /** Figures that change, by key; an empty text makes one unknown. The others stay. */
    readonly figures?: Readonly<Record<string, string>>;
  };
}

/**
 * Changes fields and figures of a machine. Its lengths are kept with their unit, for a machine goes from build to build. With
 * another type, figures that this one has no use for stay, in case the first was right after all.
 */
export default defineCommand<MachineSet>({
  id: 'machine-set',
  run(build, { machine: id, set }) {
    const from = recordOf(build, 'machine', id);
    if (!from) return err({ code: 'machine-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'machine' } });
    const figures = Object.entries({ ...from.figures, ...set.figures }).filter(([, text]) => text.trim() !== '');
    const given = leaveOutUndefined(set);
    const changed: Machine = { ...from, ...given, name, figures: Object.fromEntries(figures) };
    const to = machineAsKept(changed, settingsOf(build).lengthUnit);
    if (!to.ok) return to;
    const draft = draftOf(build);
    draft.put(to.value);
    return ok({ diff: draft.diff(), label: labelOf(from, set) });
  },
});

function labelOf(machine: Machine, set: MachineSet['set']): string {
  const { name, type } = machine;
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change machine ${name}`;
  const [field, value] = only;
  if (field === 'name') return `rename machine ${name} to ${String(value).trim()}`;
  if (field === 'note') return `change note of machine ${name}`;
  if (field === 'bed') return `change bed of machine ${name}`;
  if (field === 'generic') return `mark machine ${name} as ${value ? 'generic' : 'measured'}`;
  const figures = Object.entries(set.figures ?? {});
  const [figure] = figures;
  if (field !== 'figures' || figures.length !== 1 || !figure) return `change machine ${name}`;
  const [key, text] = figure;
  const label = (machineFigure(type, key)?.label ?? key).toLowerCase();
  return text.trim() === '' ? `clear ${label} of ${name}` : `set ${label} of ${name} to ${shorten(text.trim())}`;
}
