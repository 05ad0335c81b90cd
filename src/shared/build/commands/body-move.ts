import type { BodyId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { bodiesOf, recordOf } from '../look-up.ts';
import { placeInList } from '../place-in-list.ts';

export interface BodyMove {
  readonly body: BodyId;
  /** The body of the same part to act before; undefined: the last. */
  readonly before: BodyId | undefined;
}

/** Changes when a body acts: bodies add and take in the order of the list. */
export default defineCommand<BodyMove>({
  id: 'body-move',
  run(build, { body: id, before }) {
    const body = recordOf(build, 'body', id);
    if (!body) return err({ code: 'body-not-found' });
    const list = bodiesOf(build, body.part);
    if (before !== undefined && !list.some((other) => other.id === before)) return err({ code: 'body-not-found' });
    const draft = draftOf(build);
    if (id !== before) {
      const { orders, moved } = placeInList(
        list.filter((other) => other.id !== id),
        before,
      );
      for (const [, to] of moved) draft.put(to);
      draft.put({ ...body, order: orders[0]! });
    }
    return ok({ diff: draft.diff(), label: `move ${body.name}` });
  },
});
