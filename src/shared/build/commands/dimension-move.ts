import type { DimensionId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { dimensionsOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface DimensionMove {
  readonly dimension: DimensionId;
  /** The dimension of the same part to stand before; undefined: the end of the list. */
  readonly before: DimensionId | undefined;
}

export default defineCommand<DimensionMove>({
  id: 'dimension-move',
  run(build, { dimension: id, before }) {
    const dimension = recordOf(build, 'dimension', id);
    const diff = dimension && moveInList(build, dimensionsOf(build, dimension.part), dimension, before);
    if (!diff) return err({ code: 'dimension-not-found' });
    return ok({ diff, label: `move ${dimension.name}` });
  },
});
