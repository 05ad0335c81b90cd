import type { SetupId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { recordOf, setupsOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { labelOfPlan } from '../plan-guards.ts';
import type { Setup } from '../setup.ts';

export interface SetupCopy {
  readonly setup: SetupId;
  /** Without one it is called after the first. */
  readonly name?: string;
}

/** Puts a copy of a set-up behind it, to try another machine or way of holding. Operations stay in the first. */
export default defineCommand<SetupCopy>({
  id: 'setup-copy',
  run(build, { setup: id, name }, { newId }) {
    const from = recordOf(build, 'setup', id);
    if (!from) return err({ code: 'setup-not-found' });
    const list = setupsOf(build, from.part);
    const next = list[list.indexOf(from) + 1];
    const taken = list.map((setup) => setup.name);
    const { orders, moved } = placeInList(list, next?.id);
    // Names end at 120 characters; the number that makes it another one must find room.
    const stem = from.name.slice(0, 110).trim();
    const copy: Setup = {
      ...from,
      id: newId('setup'),
      name: name?.trim() || freeName(stem, taken),
      order: orders[0]!,
    };
    const refused = whyNotKept(copy);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(copy);
    return ok({ diff: draft.diff(), label: `copy ${labelOfPlan(build, from)}` });
  },
});
