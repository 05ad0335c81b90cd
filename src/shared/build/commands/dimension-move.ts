import type { DimensionId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { dimensionsOf, recordOf } from '../look-up.ts';
import { placeInList } from '../place-in-list.ts';

export interface DimensionMove {
  readonly dimension: DimensionId;
  /** The dimension of the same part to stand before; undefined: the end of the list. */
  readonly before: DimensionId | undefined;
}

export default defineCommand<DimensionMove>({
  id: 'dimension-move',
  run(build, { dimension: id, before }) {
    const dimension = recordOf(build, 'dimension', id);
    if (!dimension) return err({ code: 'dimension-not-found' });
    const list = dimensionsOf(build, dimension.part);
    if (before !== undefined && !list.some((other) => other.id === before)) return err({ code: 'dimension-not-found' });
    const draft = draftOf(build);
    if (id !== before) {
      const { orders, moved } = placeInList(
        list.filter((other) => other.id !== id),
        before,
      );
      for (const [, to] of moved) draft.put(to);
      draft.put({ ...dimension, order: orders[0]! });
    }
    return ok({ diff: draft.diff(), label: `move ${dimension.name}` });
  },
});
