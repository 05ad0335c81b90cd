import type { BodyId, PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import type { Body } from '../body.ts';
import { checkBody } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { bodiesOf, recordOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';

export interface BodyAdd {
  readonly part: PartId;
  readonly shape: Body['shape'];
  /** Fields that differ from those of a new body; without a name it is called after its shape. */
  readonly set?: Partial<Pick<Body, 'name' | 'adds' | 'finish' | 'repeats' | 'note'>>;
  /** The body to stand before; otherwise it acts last. */
  readonly before?: BodyId;
}

/** Adds a body on stations and sizes that are there. New ones along with it: `body-sketch`. */
export default defineCommand<BodyAdd>({
  id: 'body-add',
  run(build, { part: partId, shape, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = bodiesOf(build, partId);
    const taken = list.map((other) => other.name);
    const { orders, moved } = placeInList(list, before);
    const takes = shape.type === 'hole';
    const body: Body = {
      kind: 'body',
      id: newId('body'),
      part: partId,
      adds: !takes,
      finish: takes ? 'machined' : 'as cast',
      shape,
      repeats: [],
      note: '',
      order: orders[0]!,
      ...set,
      name: set.name?.trim() || freeName(shape.type, taken),
    };
    const refused = whyNotKept(body);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkBody(draft, body);
    if (!holds.ok) return holds;
    for (const [, to] of moved) draft.put(to);
    draft.put(body);
    return ok({ diff: draft.diff(), label: `add ${body.name} to ${part.name}` });
  },
});
