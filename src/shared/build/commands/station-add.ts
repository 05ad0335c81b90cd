import type { PartId, StationId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { recordOf, stationsOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { type Axis, defaultStation, type Station } from '../station.ts';

export type StationFields = Partial<Pick<Station, 'name' | 'form' | 'note'>>;

export interface StationAdd {
  readonly part: PartId;
  readonly axis: Axis;
  /** Fields that differ from a new station's; without a name it gets a free one. */
  readonly set?: StationFields;
  /** The station to stand before; otherwise it goes to the end of the part's list. */
  readonly before?: StationId;
}

/** Adds a station. The first one of an axis becomes its datum. */
export default defineCommand<StationAdd>({
  id: 'station-add',
  run(build, { part: partId, axis, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const ofAxis = stationsOf(build, partId, axis);
    const name =
      set.name?.trim() ||
      freeName(
        'new station',
        ofAxis.map((station) => station.name),
      );
    const { orders, moved } = placeInList(stationsOf(build, partId), before);
    const station: Station = {
      ...defaultStation(newId('station'), partId, axis, name, orders[0]!),
      ...set,
      name,
      datum: ofAxis.length === 0,
    };
    const refused = whyNotKept(station);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(station);
    return ok({ diff: draft.diff(), label: `add station ${name} to ${part.name}` });
  },
});
