import type { MaterialId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';

export interface MaterialRemove {
  readonly material: MaterialId;
}

/** Removes a material of the build's own. Parts keep its name; the table may know it, or its values are asked for again. */
export default defineCommand<MaterialRemove>({
  id: 'material-remove',
  run(build, { material }) {
    const record = recordOf(build, 'material', material);
    if (!record) return err({ code: 'material-not-found' });
    const draft = draftOf(build);
    draft.remove(record.id);
    return ok({ diff: draft.diff(), label: `remove material ${record.name}` });
  },
});
