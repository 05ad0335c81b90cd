import type { OperationId, PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { operationsOf, recordOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { defaultOperation, type Operation, type Process } from '../operation.ts';
import { placeInList } from '../place-in-list.ts';
import { checkPlan } from '../plan-guards.ts';

/** Fields of an operation as they are given; a set-up or a cut that is undefined is taken out. */
export type OperationFields = Partial<Omit<Operation, 'kind' | 'id' | 'part' | 'order' | 'tool' | 'chosen'>> & {
  /** Members that change; the others stay. */
  readonly tool?: Partial<Operation['tool']>;
  readonly chosen?: Partial<Operation['chosen']>;
};

export interface OperationAdd {
  readonly part: PartId;
  readonly process: Process;
  /** Fields that differ from a new operation's; without a name it is called after its process. */
  readonly set?: OperationFields;
  /** The operation of the same part to stand before; otherwise it goes to the end of the route. */
  readonly before?: OperationId;
}

/** The operation with fields put over its own. */
export const withOperationFields = (from: Operation, { tool, chosen, ...set }: OperationFields): Operation =>
  leaveOutUndefined({
    ...from,
    ...set,
    tool: { ...from.tool, ...leaveOutUndefined(tool ?? {}) },
    chosen: { ...from.chosen, ...leaveOutUndefined(chosen ?? {}) },
  });

export default defineCommand<OperationAdd>({
  id: 'operation-add',
  run(build, { part: partId, process, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = operationsOf(build, partId);
    const taken = list.map((operation) => operation.name);
    const name = set.name?.trim() || freeName(process, taken);
    const { orders, moved } = placeInList(list, before);
    const fresh = defaultOperation(newId('operation'), partId, name, process, orders[0]!);
    const operation = withOperationFields(fresh, { ...set, process, name });
    const refused = whyNotKept(operation);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, operation);
    if (!holds.ok) return holds;
    for (const [, to] of moved) draft.put(to);
    draft.put(operation);
    return ok({ diff: draft.diff(), label: `add operation ${name} of ${part.name}` });
  },
});
