import type { MaterialId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { nameKey } from '../../formula/name-key.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { alloysOf, materialsOf, partsOf, poursOf, recordOf, setupsOf } from '../look-up.ts';
import type { MaterialFields } from './material-add.ts';

type Values = MaterialFields['values'];

export interface MaterialSet {
  readonly material: MaterialId;
  /** Of `values` only those that change; one that is undefined is not known any more. */
  readonly set: Partial<Omit<MaterialFields, 'values'>> & {
    readonly values?: { readonly [K in keyof Values]?: Values[K] | undefined };
  };
}

/** Changes a material of the build's own; a new name is carried into the parts, fixtures, inserts and pours that name it. */
export default defineCommand<MaterialSet>({
  id: 'material-set',
  run(build, { material: id, set }) {
    const from = recordOf(build, 'material', id);
    if (!from) return err({ code: 'material-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'material' } });
    if (materialsOf(build).some((other) => other.id !== id && nameKey(other.name) === nameKey(name))) {
      return err({ code: 'material-name-taken', data: { name } });
    }
    const values = leaveOutUndefined({ ...from.values, ...set.values }) as Values;
    const to = { ...from, ...set, values, name };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    if (name !== from.name) {
      for (const part of partsOf(build)) {
        if (nameKey(part.material) === nameKey(from.name)) draft.put({ ...part, material: name });
        for (const setup of setupsOf(build, part.id)) {
          if (!setup.fixtures.some((fixture) => nameKey(fixture.material) === nameKey(from.name))) continue;
          const fixtures = setup.fixtures.map((fixture) =>
            nameKey(fixture.material) === nameKey(from.name) ? { ...fixture, material: name } : fixture,
          );
          draft.put({ ...setup, fixtures });
        }
      }
      // A pour goes on naming an alloy of the build's own that is called like the material.
      const isAlloy = alloysOf(build).some((alloy) => nameKey(alloy.name) === nameKey(from.name));
      for (const pour of poursOf(build)) {
        const isIt = (text: string): boolean => nameKey(text) === nameKey(from.name);
        const inserts = pour.inserts.map((insert) => (isIt(insert.material) ? { ...insert, material: name } : insert));
        draft.put({ ...pour, inserts, alloy: isIt(pour.alloy) && !isAlloy ? name : pour.alloy });
      }
    }
    const label = name === from.name ? `change material ${name}` : `rename material ${from.name} to ${name}`;
    return ok({ diff: draft.diff(), label });
  },
});
