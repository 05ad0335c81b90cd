import type { OperationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { operationsOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';
import { labelOfPlan } from '../plan-guards.ts';

export interface OperationMove {
  readonly operation: OperationId;
  /** The operation of the same part to be done before; undefined: the last of the route. */
  readonly before: OperationId | undefined;
}

export default defineCommand<OperationMove>({
  id: 'operation-move',
  run(build, { operation: id, before }) {
    const operation = recordOf(build, 'operation', id);
    const diff = operation && moveInList(build, operationsOf(build, operation.part), operation, before);
    if (!diff) return err({ code: 'operation-not-found' });
    return ok({ diff, label: `move ${labelOfPlan(build, operation)}` });
  },
});
