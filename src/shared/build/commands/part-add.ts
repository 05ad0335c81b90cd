import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { partsOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { defaultPart, type Part } from '../part.ts';
import { placeInList } from '../place-in-list.ts';

export type PartFields = Partial<Omit<Part, 'kind' | 'id' | 'order'>>;

export interface PartAdd {
  /** Fields that differ from a new part's; without a name it gets a free one. */
  readonly set?: PartFields;
  /** The part to stand before; otherwise it goes to the end of the list. */
  readonly before?: PartId;
}

export default defineCommand<PartAdd>({
  id: 'part-add',
  run(build, { set = {}, before }, { newId }) {
    const parts = partsOf(build);
    const given = set.name?.trim();
    const name =
      given ||
      freeName(
        'new part',
        parts.map((part) => part.name),
      );
    const { orders, moved } = placeInList(parts, before);
    const part: Part = { ...defaultPart(newId('part'), name, orders[0]!), ...set, name };
    const refused = whyNotKept(part);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(part);
    return ok({ diff: draft.diff(), label: `add part ${name}` });
  },
});
