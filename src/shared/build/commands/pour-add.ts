import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { poursOf } from '../look-up.ts';
import { freeName, withNames } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { checkPlan } from '../plan-guards.ts';
import { defaultPour, type Pour } from '../pour.ts';

/** Fields of a pour as they are given; one that is undefined is taken out. How it went is written by `journal-set`. */
export type PourFields = Partial<Omit<Pour, 'kind' | 'id' | 'order' | 'journal' | 'gating'>> & {
  /** Members that change; the others stay. */
  readonly gating?: Partial<Pour['gating']>;
};

export interface PourAdd {
  /** Fields that differ from a new pour's; without a name it gets a free one. */
  readonly set?: PourFields;
  /** The pour to stand before; otherwise it goes to the end of the list. */
  readonly before?: PourId;
}

/** The pour with fields put over its own. */
export const withPourFields = (from: Pour, { gating, ...set }: PourFields): Pour =>
  leaveOutUndefined({
    ...from,
    ...set,
    gating: { ...from.gating, ...leaveOutUndefined(gating ?? {}) },
    ...(set.risers ? { risers: withNames(set.risers, 'riser') } : {}),
    ...(set.inserts ? { inserts: withNames(set.inserts, 'insert') } : {}),
  });

export default defineCommand<PourAdd>({
  id: 'pour-add',
  run(build, { set = {}, before }, { newId }) {
    const list = poursOf(build);
    const taken = list.map((pour) => pour.name);
    const name = set.name?.trim() || freeName('pour', taken);
    const { orders, moved } = placeInList(list, before);
    const pour = withPourFields(defaultPour(newId('pour'), name, orders[0]!), { ...set, name });
    const refused = whyNotKept(pour);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, pour);
    if (!holds.ok) return holds;
    for (const [, to] of moved) draft.put(to);
    draft.put(pour);
    return ok({ diff: draft.diff(), label: `add pour ${name}` });
  },
});
