import type { StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { refuseIfNeeded } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { dimensionsAt, recordOf, stationsOf } from '../look-up.ts';
import { counted } from '../names.ts';
import { refuseIfPlansStandOn } from '../plan-guards.ts';
import type { Axis, Station } from '../station.ts';
import type { StationFields } from './station-add.ts';

export interface StationSet {
  readonly changes: readonly {
    readonly station: StationId;
    readonly set: StationFields & { readonly axis?: Axis };
  }[];
}

/**
 * Changes fields of stations. The axis can change only while no dimension, no body, no set-up and no operation uses the station; on its new axis it becomes
 * the datum if it is the first there, else it is none.
 */
export default defineCommand<StationSet>({
  id: 'station-set',
  run(build, { changes }) {
    const [first] = changes;
    if (!first) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    for (const { station: id, set } of changes) {
      const from = recordOf(build, 'station', id);
      if (!from) return err({ code: 'station-not-found' });
      const name = set.name === undefined ? from.name : set.name.trim();
      if (name === '') return err({ code: 'name-empty', data: { what: 'station' } });
      const to: Station = { ...from, ...set, name };
      const refused = whyNotKept(to);
      if (refused) return err(refused);
      if (to.axis === from.axis) {
        draft.put(to);
        continue;
      }
      const users = dimensionsAt(build, new Set([id]));
      if (users.length > 0) {
        return err({
          code: 'station-axis-used',
          data: { count: users.length, station: from.name, axis: from.axis },
        });
      }
      const free = refuseIfNeeded(build, new Set([id]));
      if (!free.ok) return free;
      const unplanned = refuseIfPlansStandOn(build, id);
      if (!unplanned.ok) return unplanned;
      const there = stationsOf(build, from.part).filter((other) => {
        const now = draft.get(other.id);
        return now?.kind === 'station' && now.axis === to.axis && now.id !== id;
      });
      draft.put({ ...to, datum: there.length === 0 });
    }
    const station = recordOf(build, 'station', first.station);
    const label =
      changes.length === 1 && station ? labelOf(station, first.set) : `change ${counted(changes.length, 'station')}`;
    return ok({ diff: draft.diff(), label });
  },
});

function labelOf(station: Station, set: StationSet['changes'][number]['set']): string {
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change station ${station.name}`;
  const [field, value] = only;
  if (field === 'name') return `rename station ${station.name} to ${String(value).trim()}`;
  if (field === 'note') return `change note of station ${station.name}`;
  return `set ${field} of station ${station.name} to ${shorten(String(value))}`;
}
