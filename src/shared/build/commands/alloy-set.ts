import type { AlloyId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { nameKey } from '../../formula/name-key.ts';
import { materialNamed } from '../../tables/materials.ts';
import { defineCommand } from '../command.ts';
import { type Draft, draftOf } from '../draft.ts';
import { materialsOf, partsOf, poursOf, recordOf } from '../look-up.ts';
import { materialOf } from '../material.ts';
import type { Build } from '../records.ts';
import { type AlloyFields, alloyAsKept } from './alloy-add.ts';

export interface AlloySet {
  readonly alloy: AlloyId;
  /** `figures` as a whole: what is not in it is taken from the table again. */
  readonly set: Partial<AlloyFields>;
}

/**
 * Changes an alloy of the build's own. A new name is carried into the pours that name it, and into parts whose material is known
 * by this name alone.
 */
export default defineCommand<AlloySet>({
  id: 'alloy-set',
  run(build, { alloy: id, set }) {
    const from = recordOf(build, 'alloy', id);
    if (!from) return err({ code: 'alloy-not-found' });
    const to = alloyAsKept(build, { ...from, ...set });
    if (!to.ok) return to;
    const { name } = to.value;
    const draft = draftOf(build);
    draft.put(to.value);
    if (name !== from.name) carry(build, draft, from.name, name);
    const label = name === from.name ? `change alloy ${name}` : `rename alloy ${from.name} to ${name}`;
    return ok({ diff: draft.diff(), label });
  },
});

function carry(build: Build, draft: Draft, from: string, to: string): void {
  const isIt = (name: string): boolean => nameKey(name.trim()) === nameKey(from);
  for (const pour of poursOf(build)) if (isIt(pour.alloy)) draft.put({ ...pour, alloy: to });
  // A part's material may be known to the table of materials too: then it stays what it is.
  if (materialNamed(from, materialsOf(build).map(materialOf))) return;
  for (const part of partsOf(build)) if (isIt(part.material)) draft.put({ ...part, material: to });
}
