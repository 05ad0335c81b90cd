import type { StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { refuseIfNeeded } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { dimensionsAt, recordOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface StationRemove {
  readonly stations: readonly StationId[];
}

/**
 * Removes stations, and with them the dimensions that measure from or to them; the label says how many. Refused while bodies
 * hang on any of them, or plans are placed on them; what operations make, and the stock of a casting, is cleared of them.
 */
export default defineCommand<StationRemove>({
  id: 'station-remove',
  run(build, { stations }) {
    const gone = new Set<string>(stations);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const names: string[] = [];
    for (const id of gone) {
      const station = recordOf(build, 'station', id);
      if (!station) return err({ code: 'station-not-found' });
      names.push(station.name);
      draft.remove(station.id);
    }
    const dimensions = dimensionsAt(build, gone);
    for (const dimension of dimensions) {
      draft.remove(dimension.id);
      gone.add(dimension.id);
    }
    const free = refuseIfNeeded(build, gone);
    if (!free.ok) return free;
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeAcceptancesOf(build, draft, gone);
    const what = names.length === 1 ? `station ${names[0]}` : counted(names.length, 'station');
    const along =
      dimensions.length > 0
        ? ` and ${counted(dimensions.length, 'dimension')} that used ${names.length === 1 ? 'it' : 'them'}`
        : '';
    return ok({ diff: draft.diff(), label: `remove ${what}${along}` });
  },
});
