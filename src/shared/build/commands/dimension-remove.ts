import type { DimensionId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { refuseIfNeeded } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface DimensionRemove {
  readonly dimensions: readonly DimensionId[];
}

/** Removes dimensions, and a casting's stock on them; refused while bodies, set-ups or operations take one of them for a size. */
export default defineCommand<DimensionRemove>({
  id: 'dimension-remove',
  run(build, { dimensions }) {
    const gone = new Set<string>(dimensions);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const names: string[] = [];
    for (const id of gone) {
      const dimension = recordOf(build, 'dimension', id);
      if (!dimension) return err({ code: 'dimension-not-found' });
      names.push(`${dimension.name} of ${recordOf(build, 'part', dimension.part)?.name ?? 'part'}`);
      draft.remove(dimension.id);
    }
    const free = refuseIfNeeded(build, gone);
    if (!free.ok) return free;
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    return ok({
      diff: draft.diff(),
      label: `remove ${names.length === 1 ? names[0] : counted(names.length, 'dimension')}`,
    });
  },
});
