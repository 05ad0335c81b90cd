import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { castingOf, poursOf, recordOf } from '../look-up.ts';
import { nextName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import type { Pour } from '../pour.ts';
import type { Build } from '../records.ts';

export interface PourCopy {
  readonly pour: PourId;
  /** Without one it is called after the first, with the next number. */
  readonly name?: string;
}

/**
 * Plans the next attempt: as the last one was planned, standing behind it, with nothing in its journal yet. Patterns of foam were
 * used up; those that can be drawn serve again.
 */
export default defineCommand<PourCopy>({
  id: 'pour-copy',
  run(build, { pour: id, name }, { newId }) {
    const from = recordOf(build, 'pour', id);
    if (!from) return err({ code: 'pour-not-found' });
    const list = poursOf(build);
    const next = list[list.indexOf(from) + 1];
    const { orders, moved } = placeInList(list, next?.id);
    const taken = list.map((pour) => pour.name);
    const { journal: _, ...plan } = from;
    const copy: Pour = {
      ...plan,
      id: newId('pour'),
      name: name?.trim() || nextName(from.name, taken),
      castings: from.castings.map((casting) => withoutFoam(build, casting)),
      after: from.id,
      order: orders[0]!,
    };
    const refused = whyNotKept(copy);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(copy);
    return ok({ diff: draft.diff(), label: `plan the next attempt of pour ${from.name}` });
  },
});

function withoutFoam(build: Build, casting: Pour['castings'][number]): Pour['castings'][number] {
  const { pattern, ...rest } = casting;
  const { moulding } = castingOf(build, casting.part) ?? { moulding: 'foam in dry sand' };
  return pattern === undefined || moulding.startsWith('foam') ? rest : casting;
}
