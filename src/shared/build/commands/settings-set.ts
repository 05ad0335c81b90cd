import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { settingsOf } from '../look-up.ts';
import type { Settings } from '../settings.ts';

export interface SettingsSet {
  readonly set: Partial<Omit<Settings, 'kind' | 'id'>>;
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
  run(build, { set }) {
    const from = settingsOf(build);
    const to = { ...from, ...set, ...(set.name === undefined ? {} : { name: set.name.trim() }) };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    const fields = Object.keys(set) as (keyof SettingsSet['set'])[];
    const [only] = fields;
    return ok({ diff: draft.diff(), label: fields.length === 1 && only ? `set ${words[only]}` : 'set build settings' });
  },
});
