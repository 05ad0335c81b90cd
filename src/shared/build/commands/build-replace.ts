import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten } from '../keepable.ts';
import type { BuildRecord } from '../records.ts';
import { SETTINGS_ID } from '../settings.ts';
import { validateBuild } from '../validate-build.ts';

export interface BuildReplace {
  readonly records: readonly BuildRecord[];
}

/** Puts another build in the place of this one, as one step: what keeps its id counts as changed, not as new. */
export default defineCommand<BuildReplace>({
  id: 'build-replace',
  run(build, { records }) {
    const validated = validateBuild(records);
    if (!validated.ok) {
      const [first] = validated.problems;
      return err({
        code: 'records-do-not-hold',
        data: {
          where: first?.index === undefined ? 'the records' : `record ${first.index + 1}`,
          what: first?.what ?? '',
          remedy: first?.remedy ?? '',
        },
      });
    }
    const draft = draftOf(build);
    const kept = new Set<string>(validated.records.map((record) => record.id));
    for (const id of build.keys()) if (!kept.has(id)) draft.remove(id);
    for (const record of validated.records) draft.put(record);
    const settings = validated.records.find((record) => record.id === SETTINGS_ID);
    const name = settings?.kind === 'settings' ? settings.name : 'another build';
    return ok({ diff: draft.diff(), label: `take in ${shorten(name)}` });
  },
});
