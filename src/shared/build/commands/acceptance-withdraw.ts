import type { AcceptanceId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';

export interface AcceptanceWithdraw {
  readonly acceptance: AcceptanceId;
}

/** Takes an acceptance back: its finding is open again. */
export default defineCommand<AcceptanceWithdraw>({
  id: 'acceptance-withdraw',
  run(build, { acceptance: id }) {
    if (!recordOf(build, 'acceptance', id)) return err({ code: 'acceptance-not-found' });
    const draft = draftOf(build);
    draft.remove(id);
    return ok({ diff: draft.diff(), label: 're-open finding' });
  },
});
