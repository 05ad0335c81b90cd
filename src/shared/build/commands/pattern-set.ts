import type { PatternId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import type { Pattern } from '../pattern.ts';
import { labelOfPlan } from '../plan-guards.ts';
import type { Build } from '../records.ts';
import { type PatternFields, withPatternFields } from './pattern-add.ts';

export interface PatternSet {
  readonly pattern: PatternId;
  readonly set: PatternFields;
}

/** Changes fields of a pattern: what was measured, tried and weighed. */
export default defineCommand<PatternSet>({
  id: 'pattern-set',
  run(build, { pattern: id, set }) {
    const from = recordOf(build, 'pattern', id);
    if (!from) return err({ code: 'pattern-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'pattern' } });
    const to = withPatternFields(from, { ...set, name });
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    return ok({ diff: draft.diff(), label: labelOf(build, from, set) });
  },
});

const words: Readonly<Partial<Record<keyof PatternFields, string>>> = {
  trials: 'trials',
  rule: 'rule of drying',
  bare: 'mass before coating',
  scaleStep: 'step of the scale',
};

function labelOf(build: Build, from: Pattern, set: PatternFields): string {
  const name = labelOfPlan(build, from);
  const fields = Object.entries(set) as (readonly [keyof PatternFields, unknown])[];
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${name}`;
  const [field, value] = only;
  switch (field) {
    case 'name':
      return `rename ${name} to ${shorten(String(value).trim())}`;
    case 'measured':
      return `note what was measured on ${name}`;
    case 'cast':
      return `note what was measured on the casting of ${name}`;
    case 'plaster':
      return value === true ? `coat ${name} with plaster` : `coat ${name} without plaster`;
    case 'takenOn':
      return value === '' ? `take ${name} upon oneself no longer` : `take ${name} upon oneself`;
    default: {
      const what = `${words[field] ?? field} of ${name}`;
      if (typeof value !== 'string' || field === 'note') return `change ${what}`;
      return value.trim() === '' ? `clear ${what}` : `set ${what} to ${shorten(value.trim())}`;
    }
  }
}
