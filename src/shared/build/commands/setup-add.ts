import type { PartId, SetupId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { recordOf, setupsOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { checkPlan } from '../plan-guards.ts';
import { defaultSetup, type Setup } from '../setup.ts';

/** Fields of a set-up as they are given; a machine that is undefined is taken out. */
export type SetupFields = Partial<Omit<Setup, 'kind' | 'id' | 'part' | 'order'>>;

export interface SetupAdd {
  readonly part: PartId;
  /** Fields that differ from a new set-up's; without a name it gets a free one. */
  readonly set?: SetupFields;
  /** The set-up of the same part to stand before; otherwise it goes to the end of the list. */
  readonly before?: SetupId;
}

/** A fixture without a name is called after what it is. */
export const withFixtureNames = (set: SetupFields): SetupFields =>
  set.fixtures === undefined
    ? set
    : { ...set, fixtures: set.fixtures.map((fixture) => ({ ...fixture, name: fixture.name.trim() || fixture.what })) };

export default defineCommand<SetupAdd>({
  id: 'setup-add',
  run(build, { part: partId, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = setupsOf(build, partId);
    const taken = list.map((setup) => setup.name);
    const name = set.name?.trim() || freeName('set-up', taken);
    const { orders, moved } = placeInList(list, before);
    const fresh = defaultSetup(newId('setup'), partId, name, orders[0]!);
    const setup: Setup = leaveOutUndefined({ ...fresh, ...withFixtureNames(set), name });
    const refused = whyNotKept(setup);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, setup);
    if (!holds.ok) return holds;
    for (const [, to] of moved) draft.put(to);
    draft.put(setup);
    return ok({ diff: draft.diff(), label: `add set-up ${name} of ${part.name}` });
  },
});
