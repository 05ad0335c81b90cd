import type { DimensionId, PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { type Dimension, defaultDimension, type Measure } from '../dimension.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { dimensionsOf, recordOf } from '../look-up.ts';
import { checkMeasure, nameOfMeasure } from '../measuring.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';

export type DimensionFields = Partial<Omit<Dimension, 'kind' | 'id' | 'part' | 'order'>>;

export interface DimensionAdd {
  readonly part: PartId;
  readonly measure: Measure;
  /** Fields that differ from a new dimension's; without a name it is called after what it measures. */
  readonly set?: Omit<DimensionFields, 'measure'>;
  /** The dimension to stand before; otherwise it goes to the end of the part's list. */
  readonly before?: DimensionId;
}

/** Adds a dimension. */
export default defineCommand<DimensionAdd>({
  id: 'dimension-add',
  run(build, { part: partId, measure, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const checked = checkMeasure(build, partId, measure);
    if (!checked.ok) return checked;
    const list = dimensionsOf(build, partId);
    const name =
      set.name?.trim() ||
      freeName(
        nameOfMeasure(build, measure),
        list.map((other) => other.name),
      );
    const { orders, moved } = placeInList(list, before);
    const dimension: Dimension = {
      ...defaultDimension(newId('dimension'), partId, name, measure, orders[0]!),
      ...set,
      name,
    };
    const refused = whyNotKept(dimension);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(dimension);
    return ok({ diff: draft.diff(), label: `add ${name} to ${part.name}` });
  },
});
