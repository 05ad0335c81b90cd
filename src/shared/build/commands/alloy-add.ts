import { err, ok, type Result } from '../../base/result.ts';
import { nameKey } from '../../formula/name-key.ts';
import { alloyOf, crossedIn, type OwnAlloy } from '../alloy.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { alloysOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import type { Refusal } from '../refusals.ts';

export type AlloyFields = Omit<OwnAlloy, 'kind' | 'id'>;

export interface AlloyAdd {
  readonly alloy: AlloyFields;
}

/** The alloy as a build keeps it, or why it cannot: without a name, called like another one, figures the wrong way round. */
export function alloyAsKept(build: Build, given: OwnAlloy): Result<OwnAlloy, Refusal> {
  const name = given.name.trim();
  if (name === '') return err({ code: 'name-empty', data: { what: 'alloy' } });
  if (alloysOf(build).some((other) => other.id !== given.id && nameKey(other.name) === nameKey(name))) {
    return err({ code: 'alloy-name-taken', data: { name } });
  }
  const alloy: OwnAlloy = leaveOutUndefined({ ...given, name });
  const refused = whyNotKept(alloy);
  if (refused) return err(refused);
  const crossed = crossedIn(alloyOf(alloy));
  return crossed ? err({ code: 'alloy-figures-cross', data: { name, ...crossed } }) : ok(alloy);
}

/** Adds an alloy of the build's own, or figures of one's own for one of the table. */
export default defineCommand<AlloyAdd>({
  id: 'alloy-add',
  run(build, { alloy: given }, { newId }) {
    const alloy = alloyAsKept(build, { kind: 'alloy', id: newId('alloy'), ...given });
    if (!alloy.ok) return alloy;
    const draft = draftOf(build);
    draft.put(alloy.value);
    return ok({ diff: draft.diff(), label: `add alloy ${alloy.value.name}` });
  },
});
