import type { SetupId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { recordOf, setupsOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';
import { labelOfPlan } from '../plan-guards.ts';

export interface SetupMove {
  readonly setup: SetupId;
  /** The set-up of the same part to stand before; undefined: the end of the list. */
  readonly before: SetupId | undefined;
}

export default defineCommand<SetupMove>({
  id: 'setup-move',
  run(build, { setup: id, before }) {
    const setup = recordOf(build, 'setup', id);
    const diff = setup && moveInList(build, setupsOf(build, setup.part), setup, before);
    if (!diff) return err({ code: 'setup-not-found' });
    return ok({ diff, label: `move ${labelOfPlan(build, setup)}` });
  },
});
