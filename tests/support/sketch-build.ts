import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { type Dimension, defaultDimension, type SizeForm } from '../../src/shared/build/dimension.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';
import type { Build, BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings, type Settings } from '../../src/shared/build/settings.ts';
import { type Axis, defaultStation, type Station } from '../../src/shared/build/station.ts';

export const partId = (name: string): PartId => `part:${name}` as PartId;
export const stationId = (name: string): StationId => `station:${name}` as StationId;
export const dimensionId = (name: string): DimensionId => `dimension:${name}` as DimensionId;

/** Collects the records of a small build; ids are the names, list order is the order of calls. */
export function sketch() {
  const records: BuildRecord[] = [defaultSettings('sketch')];
  let part = partId('part');
  let order = 0;
  const push = <R extends BuildRecord>(record: R): R => {
    records.push(record);
    return record;
  };
  const self = {
    settings(fields: Partial<Settings>) {
      records[0] = { ...(records[0] as Settings), ...fields };
      return self;
    },
    part(name: string, fields: Partial<Part> = {}) {
      part = partId(name);
      push({ ...defaultPart(part, name, ++order), ...fields });
      return self;
    },
    station(name: string, fields: Partial<Station> = {}, axis: Axis = 'X') {
      push({ ...defaultStation(stationId(name), part, axis, name, ++order), ...fields });
      return self;
    },
    stations(...names: string[]) {
      names.forEach((name, i) => {
        self.station(name, i === 0 ? { datum: true } : {});
      });
      return self;
    },
    between(name: string, from: string, to: string, value: string, fields: Partial<Dimension> = {}) {
      const measure = { type: 'between', from: stationId(from), to: stationId(to) } as const;
      push({ ...defaultDimension(dimensionId(name), part, name, measure, ++order), value, ...fields });
      return self;
    },
    size(name: string, form: SizeForm, value: string, fields: Partial<Dimension> = {}) {
      push({ ...defaultDimension(dimensionId(name), part, name, { type: 'size', form }, ++order), value, ...fields });
      return self;
    },
    records: (): readonly BuildRecord[] => records,
    build: (): Build => buildOf(records),
  };
  return self;
}
