import type { OperationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import type { Operation } from '../operation.ts';
import { checkPlan, labelOfPlan } from '../plan-guards.ts';
import type { Build } from '../records.ts';
import { type OperationFields, withOperationFields } from './operation-add.ts';

export interface OperationSet {
  readonly changes: readonly { readonly operation: OperationId; readonly set: OperationFields }[];
}

/** Changes fields of operations. */
export default defineCommand<OperationSet>({
  id: 'operation-set',
  run(build, { changes }) {
    const [first] = changes;
    if (!first) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    for (const { operation: id, set } of changes) {
      const from = draft.get(id);
      if (from?.kind !== 'operation') return err({ code: 'operation-not-found' });
      const name = set.name === undefined ? from.name : set.name.trim();
      if (name === '') return err({ code: 'name-empty', data: { what: 'operation' } });
      const to = withOperationFields(from, { ...set, name });
      const refused = whyNotKept(to);
      if (refused) return err(refused);
      const holds = checkPlan(draft, to);
      if (!holds.ok) return holds;
      draft.put(to);
    }
    const operation = recordOf(build, 'operation', first.operation);
    const label =
      changes.length === 1 && operation
        ? labelOf(build, operation, first.set)
        : `change ${counted(changes.length, 'operation')}`;
    return ok({ diff: draft.diff(), label });
  },
});

function labelOf(build: Build, from: Operation, set: OperationFields): string {
  const words = labelOfPlan(build, from);
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${words}`;
  const [field, value] = only;
  switch (field) {
    case 'name':
      return `rename ${words} to ${shorten(String(value).trim())}`;
    case 'process':
      return `let ${words} ${String(value)}`;
    case 'setup': {
      const setup = value === undefined ? undefined : recordOf(build, 'setup', String(value));
      return setup ? `do ${words} in ${setup.name}` : `take ${words} out of its set-up`;
    }
    case 'leaves':
      return value === '' ? `clear what ${words} leaves` : `let ${words} leave ${shorten(String(value))}`;
    case 'makes':
      return `change what ${words} makes`;
    case 'from':
    case 'after':
      return `change what ${words} needs before it`;
    case 'chosen': {
      const chosen = Object.entries(set.chosen ?? {});
      const [one] = chosen;
      if (chosen.length !== 1 || !one) return `change figures of ${words}`;
      return one[1] === '' ? `clear ${one[0]} of ${words}` : `set ${one[0]} of ${words} to ${shorten(String(one[1]))}`;
    }
    default:
      return `change ${field} of ${words}`;
  }
}
