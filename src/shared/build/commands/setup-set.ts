import type { SetupId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { recordOf } from '../look-up.ts';
import { checkOperationsIn, checkPlan, labelOfPlan } from '../plan-guards.ts';
import type { Build } from '../records.ts';
import type { Setup } from '../setup.ts';
import { type SetupFields, withFixtureNames } from './setup-add.ts';

export interface SetupSet {
  readonly setup: SetupId;
  readonly set: SetupFields;
}

/** Changes fields of a set-up. Refused where the operations done in it would lose their part. */
export default defineCommand<SetupSet>({
  id: 'setup-set',
  run(build, { setup: id, set }) {
    const from = recordOf(build, 'setup', id);
    if (!from) return err({ code: 'setup-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'set-up' } });
    const to: Setup = leaveOutUndefined({ ...from, ...withFixtureNames(set), name });
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, to);
    if (!holds.ok) return holds;
    draft.put(to);
    const followed = checkOperationsIn(build, draft, id);
    if (!followed.ok) return followed;
    return ok({ diff: draft.diff(), label: labelOf(build, from, set) });
  },
});

function labelOf(build: Build, from: Setup, set: SetupFields): string {
  const words = labelOfPlan(build, from);
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${words}`;
  const [field, value] = only;
  switch (field) {
    case 'name':
      return `rename ${words} to ${shorten(String(value).trim())}`;
    case 'machine': {
      const machine = value === undefined ? undefined : recordOf(build, 'machine', String(value));
      return machine ? `put ${words} on ${machine.name}` : `take ${words} off its machine`;
    }
    case 'holding':
      return set.holding?.as === from.holding.as
        ? `change holding of ${words}`
        : `hold ${words} ${wordsOfHolding(set.holding)}`;
    case 'headEnd':
      return `turn ${words} end for end`;
    case 'allowance':
      return value === '' ? `clear allowance of ${words}` : `set allowance of ${words} to ${shorten(String(value))}`;
    default:
      return `change ${field} of ${words}`;
  }
}

function wordsOfHolding(holding: Setup['holding'] | undefined): string {
  if (!holding) return 'otherwise';
  switch (holding.as) {
    case 'between centres':
    case 'clamped to the table':
      return holding.as;
    case 'face plate':
      return 'on the face plate';
    default:
      return `in the ${holding.as}`;
  }
}
