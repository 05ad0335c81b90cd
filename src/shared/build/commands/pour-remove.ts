import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { poursOf, recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface PourRemove {
  readonly pours: readonly PourId[];
}

/** Removes pours with their journals. An attempt that came after one of them comes after the one before that, if it stays. */
export default defineCommand<PourRemove>({
  id: 'pour-remove',
  run(build, { pours }) {
    const gone = new Set<string>(pours);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const names: string[] = [];
    for (const id of gone) {
      const pour = recordOf(build, 'pour', id);
      if (!pour) return err({ code: 'pour-not-found' });
      names.push(pour.name);
      draft.remove(pour.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    for (const pour of poursOf(build)) {
      if (gone.has(pour.id) || pour.after === undefined || !gone.has(pour.after)) continue;
      let before = recordOf(build, 'pour', pour.after);
      while (before && gone.has(before.id)) before = before.after && recordOf(build, 'pour', before.after);
      const now = draft.get(pour.id);
      if (before && now?.kind === 'pour') draft.put({ ...now, after: before.id });
    }
    removeAcceptancesOf(build, draft, gone);
    return ok({
      diff: draft.diff(),
      label: `remove ${names.length === 1 ? `pour ${names[0]}` : counted(names.length, 'pour')}`,
    });
  },
});
