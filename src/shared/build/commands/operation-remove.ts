import type { OperationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { labelOfPlan, releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface OperationRemove {
  readonly operations: readonly OperationId[];
}

/** Removes operations; refused while a set-up takes the part in the state after one of them. Others no longer wait for them. */
export default defineCommand<OperationRemove>({
  id: 'operation-remove',
  run(build, { operations }) {
    const gone = new Set<string>(operations);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const labels: string[] = [];
    for (const id of gone) {
      const operation = recordOf(build, 'operation', id);
      if (!operation) return err({ code: 'operation-not-found' });
      labels.push(labelOfPlan(build, operation));
      draft.remove(operation.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    return ok({
      diff: draft.diff(),
      label: `remove ${labels.length === 1 ? labels[0] : counted(labels.length, 'operation')}`,
    });
  },
});
