import type { DimensionId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { refuseUnfitMeasure } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import type { Dimension } from '../dimension.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import { checkMeasure } from '../measuring.ts';
import { counted } from '../names.ts';
import type { Build } from '../records.ts';
import { renameInFormulas } from '../rename-in-formulas.ts';
import type { DimensionFields } from './dimension-add.ts';

export interface DimensionSet {
  readonly changes: readonly { readonly dimension: DimensionId; readonly set: DimensionFields }[];
}

/** Changes fields of dimensions; new names are carried into the formulas that name them. */
export default defineCommand<DimensionSet>({
  id: 'dimension-set',
  run(build, { changes }) {
    const [first] = changes;
    if (!first) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const renaming = new Map<DimensionId, string>();
    for (const { dimension: id, set } of changes) {
      const now = draft.get(id);
      if (now?.kind !== 'dimension') return err({ code: 'dimension-not-found' });
      const name = set.name === undefined ? now.name : set.name.trim();
      if (name === '') return err({ code: 'name-empty', data: { what: 'dimension' } });
      const to: Dimension = { ...now, ...set, name };
      const checked = checkMeasure(build, to.part, to.measure);
      if (!checked.ok) return checked;
      const refused = whyNotKept(to);
      if (refused) return err(refused);
      const fits = set.measure ? refuseUnfitMeasure(build, to) : ok(undefined);
      if (!fits.ok) return fits;
      draft.put(to);
      if (name !== now.name) renaming.set(id, name);
    }
    renameInFormulas(build, draft, renaming);
    return ok({
      diff: draft.diff(),
      label: changes.length === 1 ? labelOf(build, first) : labelOfMany(changes),
    });
  },
});

function labelOf(build: Build, { dimension: id, set }: DimensionSet['changes'][number]): string {
  const dimension = recordOf(build, 'dimension', id);
  const part = dimension && recordOf(build, 'part', dimension.part);
  const name = `${dimension?.name ?? 'dimension'} of ${part?.name ?? 'part'}`;
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${name}`;
  const [field, value] = only;
  if (field === 'name') return `rename ${name} to ${String(value).trim()}`;
  if (field === 'note') return `change note of ${name}`;
  if (field === 'measure') return `change what ${name} measures`;
  if (field === 'value') return value === '' ? `clear ${name}` : `set ${name} to ${shorten(String(value))}`;
  return value === '' ? `clear ${field} of ${name}` : `set ${field} of ${name} to ${shorten(String(value))}`;
}

function labelOfMany(changes: DimensionSet['changes']): string {
  const fields = new Set(changes.flatMap(({ set }) => Object.keys(set)));
  const [only] = fields;
  const what = fields.size === 1 && only ? `set ${only} of` : 'change';
  return `${what} ${counted(changes.length, 'dimension')}`;
}
