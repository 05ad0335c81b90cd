import { err, ok } from '../../base/result.ts';
import { nameKey } from '../../formula/name-key.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { materialsOf } from '../look-up.ts';
import type { OwnMaterial } from '../material.ts';

export type MaterialFields = Omit<OwnMaterial, 'kind' | 'id'>;

export interface MaterialAdd {
  readonly material: MaterialFields;
}

/** Adds a material of the build's own. */
export default defineCommand<MaterialAdd>({
  id: 'material-add',
  run(build, { material }, { newId }) {
    const name = material.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'material' } });
    if (materialsOf(build).some((other) => nameKey(other.name) === nameKey(name))) {
      return err({ code: 'material-name-taken', data: { name } });
    }
    const record: OwnMaterial = { kind: 'material', id: newId('material'), ...material, name };
    const refused = whyNotKept(record);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(record);
    return ok({ diff: draft.diff(), label: `add material ${name}` });
  },
});
