import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { removeUnusedSolids } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import {
  bodiesOf,
  castingOf,
  dimensionsOf,
  operationsOf,
  patternsOf,
  recordOf,
  setupsOf,
  stationsOf,
} from '../look-up.ts';
import { counted } from '../names.ts';
import { releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface PartRemove {
  readonly parts: readonly PartId[];
}

/**
 * Removes parts with all that is theirs: stations, dimensions, bodies, set-ups, operations, casting, patterns, and acceptances
 * of findings that point at them. Set-ups of other parts no longer hold them, and pours no longer pour them.
 */
export default defineCommand<PartRemove>({
  id: 'part-remove',
  run(build, { parts }) {
    const ids = [...new Set(parts)];
    if (ids.length === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const gone = new Set<string>();
    const names: string[] = [];
    for (const id of ids) {
      const part = recordOf(build, 'part', id);
      if (!part) return err({ code: 'part-not-found' });
      names.push(part.name);
      const theirs = [
        ...stationsOf(build, id),
        ...dimensionsOf(build, id),
        ...bodiesOf(build, id),
        ...setupsOf(build, id),
        ...operationsOf(build, id),
        ...patternsOf(build, id),
      ];
      const casting = castingOf(build, id);
      for (const record of [part, ...theirs, ...(casting ? [casting] : [])]) {
        draft.remove(record.id);
        gone.add(record.id);
      }
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeUnusedSolids(build, draft);
    removeAcceptancesOf(build, draft, gone);
    return ok({
      diff: draft.diff(),
      label: names.length === 1 ? `remove part ${names[0]}` : `remove ${counted(names.length, 'part')}`,
    });
  },
});
