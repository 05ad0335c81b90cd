import type { StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { recordOf, stationsOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface StationMove {
  readonly station: StationId;
  /** The station of the same part to stand before; undefined: the end of the list. */
  readonly before: StationId | undefined;
}

export default defineCommand<StationMove>({
  id: 'station-move',
  run(build, { station: id, before }) {
    const station = recordOf(build, 'station', id);
    const diff = station && moveInList(build, stationsOf(build, station.part), station, before);
    if (!diff) return err({ code: 'station-not-found' });
    return ok({ diff, label: `move station ${station.name}` });
  },
});
