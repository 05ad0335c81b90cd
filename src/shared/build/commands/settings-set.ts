import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { settingsOf } from '../look-up.ts';
import type { Settings } from '../settings.ts';
import { withUnits } from '../with-unit.ts';

export interface SettingsSet {
  readonly set: Partial<Omit<Settings, 'kind' | 'id'>>;
  /** With another unit of lengths: numbers without a unit get the one they were read in, so that nothing changes size. */
  readonly keepSizes?: boolean;
}

const words: Readonly<Record<keyof SettingsSet['set'], string>> = {
  name: 'name of the build',
  note: 'note of the build',
  lengthUnit: 'unit of lengths',
  machinedTolerance: 'tolerance class of machined dimensions',
  castingGrade: 'casting tolerance grade',
};

export default defineCommand<SettingsSet>({
  id: 'settings-set',
  run(build, { set, keepSizes = false }) {
    const from = settingsOf(build);
    const to = { ...from, ...set, ...(set.name === undefined ? {} : { name: set.name.trim() }) };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    if (keepSizes && to.lengthUnit !== from.lengthUnit) {
      for (const record of build.values()) {
        const kept = withUnits(record, from.lengthUnit);
        if (kept === record) continue;
        const unfit = whyNotKept(kept);
        if (unfit) return err(unfit);
        draft.put(kept);
      }
    }
    const fields = Object.keys(set) as (keyof SettingsSet['set'])[];
    const [only] = fields;
    return ok({ diff: draft.diff(), label: fields.length === 1 && only ? `set ${words[only]}` : 'set build settings' });
  },
});
