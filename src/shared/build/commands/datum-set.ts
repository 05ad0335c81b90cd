import type { StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf, stationsOf } from '../look-up.ts';

export interface DatumSet {
  readonly station: StationId;
  /** False takes the datum away and leaves the axis without one. */
  readonly datum: boolean;
}

/** Makes a station the datum of its axis; the one that was, is it no longer. */
export default defineCommand<DatumSet>({
  id: 'datum-set',
  run(build, { station: id, datum }) {
    const station = recordOf(build, 'station', id);
    if (!station) return err({ code: 'station-not-found' });
    const draft = draftOf(build);
    if (datum) {
      for (const other of stationsOf(build, station.part, station.axis)) {
        if (other.datum && other.id !== id) draft.put({ ...other, datum: false });
      }
    }
    draft.put({ ...station, datum });
    const label = datum
      ? `make ${station.name} the datum along ${station.axis}`
      : `clear the datum along ${station.axis}`;
    return ok({ diff: draft.diff(), label });
  },
});
