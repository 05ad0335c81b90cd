import type { StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf, stationsOf } from '../look-up.ts';
import { placeInList } from '../place-in-list.ts';

export interface StationMove {
  readonly station: StationId;
  /** The station of the same part to stand before; undefined: the end of the list. */
  readonly before: StationId | undefined;
}

export default defineCommand<StationMove>({
  id: 'station-move',
  run(build, { station: id, before }) {
    const station = recordOf(build, 'station', id);
    if (!station) return err({ code: 'station-not-found' });
    const list = stationsOf(build, station.part);
    if (before !== undefined && !list.some((other) => other.id === before)) return err({ code: 'station-not-found' });
    const draft = draftOf(build);
    if (id !== before) {
      const { orders, moved } = placeInList(
        list.filter((other) => other.id !== id),
        before,
      );
      for (const [, to] of moved) draft.put(to);
      draft.put({ ...station, order: orders[0]! });
    }
    return ok({ diff: draft.diff(), label: `move station ${station.name}` });
  },
});
