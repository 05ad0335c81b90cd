import type { AlloyId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';

export interface AlloyRemove {
  readonly alloy: AlloyId;
}

/** Removes an alloy of the build's own. Pours and parts keep its name; the table may know it, or its figures are asked for again. */
export default defineCommand<AlloyRemove>({
  id: 'alloy-remove',
  run(build, { alloy }) {
    const record = recordOf(build, 'alloy', alloy);
    if (!record) return err({ code: 'alloy-not-found' });
    const draft = draftOf(build);
    draft.remove(record.id);
    return ok({ diff: draft.diff(), label: `remove alloy ${record.name}` });
  },
});
