import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import { renameInFormulas } from '../rename-in-formulas.ts';
import type { PartFields } from './part-add.ts';

export interface PartSet {
  readonly part: PartId;
  readonly set: PartFields;
}

/** Changes fields of a part; a new name is carried into every formula that names the part. */
export default defineCommand<PartSet>({
  id: 'part-set',
  run(build, { part: id, set }) {
    const from = recordOf(build, 'part', id);
    if (!from) return err({ code: 'part-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'part' } });
    const to = { ...from, ...set, name };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    if (name !== from.name) renameInFormulas(build, draft, new Map([[id, name]]));
    return ok({ diff: draft.diff(), label: labelOf(from.name, set) });
  },
});

function labelOf(name: string, set: PartFields): string {
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${name}`;
  const [field, value] = only;
  if (field === 'name') return `rename ${name} to ${String(value).trim()}`;
  if (field === 'note') return `change note of ${name}`;
  return value === '' ? `clear ${field} of ${name}` : `set ${field} of ${name} to ${shorten(String(value))}`;
}
