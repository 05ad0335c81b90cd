import type { OperationId, PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { operationsOf, recordOf } from '../look-up.ts';

export interface OperationsOrder {
  readonly part: PartId;
  /** Every operation of the part, once, in the order wanted. */
  readonly order: readonly OperationId[];
}

/** Puts the whole route of a part into a given order, such as a proposed one. */
export default defineCommand<OperationsOrder>({
  id: 'operations-order',
  run(build, { part: partId, order }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = operationsOf(build, partId);
    const wanted = new Set(order);
    const fits = order.length === list.length && wanted.size === list.length && list.every(({ id }) => wanted.has(id));
    if (!fits) return err({ code: 'order-does-not-fit', data: { part: part.name } });
    const draft = draftOf(build);
    const byId = new Map(list.map((operation) => [operation.id, operation]));
    const isSame = list.every(({ id }, i) => id === order[i]);
    if (!isSame) {
      order.forEach((id, i) => {
        draft.put({ ...byId.get(id)!, order: i + 1 });
      });
    }
    return ok({ diff: draft.diff(), label: `put the operations of ${part.name} in order` });
  },
});
