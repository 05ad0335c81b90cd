import type { DimensionId, PartId } from '../base/ids.ts';
import { nameKey } from '../formula/name-key.ts';
import { renameReferences } from '../formula/rename.ts';
import type { Draft } from './draft.ts';
import { dimensionsOf, partsOf, settingsOf } from './look-up.ts';
import type { Build } from './records.ts';
import { writtenOptions } from './written-options.ts';

/** New names, by id, of dimensions and parts that are being renamed in one step. */
export type Renaming = ReadonlyMap<DimensionId | PartId, string>;

/**
 * Rewrites the formulas that name a renamed dimension or part, to the letter elsewhere. A name that two share, before or
 * after, is left alone: nothing tells which of the two a formula means, and left as it is it can still be mended.
 */
export function renameInFormulas(build: Build, draft: Draft, renaming: Renaming): void {
  if (renaming.size === 0) return;
  const targets = targetsOf(build, renaming);
  if (targets.folded.length === 0) return;
  const { lengthUnit } = settingsOf(build);
  for (const record of build.values()) {
    if (record.kind !== 'dimension' || record.value === '') continue;
    const text = nameKey(record.value);
    if (!targets.folded.some((name) => text.includes(name))) continue;
    const now = draft.get(record.id);
    if (now?.kind !== 'dimension' || now.value !== record.value) continue;
    const value = renameReferences(record.value, writtenOptions(record.measure, lengthUnit), ({ name, part }) => {
      const partId = part === undefined ? record.part : targets.partNamed.get(nameKey(part));
      if (partId === undefined) return undefined;
      const newName = targets.dimensionNames.get(partId)?.get(nameKey(name));
      const newPart = part === undefined ? undefined : targets.partNames.get(partId);
      if (newName === undefined && newPart === undefined) return undefined;
      return { name: newName ?? name, part: part === undefined ? undefined : (newPart ?? part) };
    });
    if (value !== record.value) draft.put({ ...now, value });
  }
}

interface Targets {
  /** Old names that formulas may hold, folded: a cheap first sieve. */
  readonly folded: readonly string[];
  /** Parts by the name that only they have. */
  readonly partNamed: ReadonlyMap<string, PartId>;
  readonly partNames: ReadonlyMap<PartId, string>;
  /** By part, from the folded old name to the new one. */
  readonly dimensionNames: ReadonlyMap<PartId, ReadonlyMap<string, string>>;
}

function targetsOf(build: Build, renaming: Renaming): Targets {
  const folded: string[] = [];
  const parts = partsOf(build);
  const partNamed = unique(parts);
  const partsAfter = unique(parts.map((part) => ({ id: part.id, name: renaming.get(part.id) ?? part.name })));
  const partNames = new Map<PartId, string>();
  const dimensionNames = new Map<PartId, Map<string, string>>();
  for (const part of parts) {
    const name = renaming.get(part.id);
    if (name !== undefined && partNamed.get(nameKey(part.name)) === part.id && partsAfter.has(nameKey(name))) {
      partNames.set(part.id, name);
      folded.push(nameKey(part.name));
    }
    const dimensions = dimensionsOf(build, part.id);
    if (!dimensions.some(({ id }) => renaming.has(id))) continue;
    const before = unique(dimensions);
    const after = unique(dimensions.map(({ id, name }) => ({ id, name: renaming.get(id) ?? name })));
    const names = new Map<string, string>();
    for (const { id, name: old } of dimensions) {
      const newName = renaming.get(id);
      if (newName === undefined || before.get(nameKey(old)) !== id || !after.has(nameKey(newName))) continue;
      names.set(nameKey(old), newName);
      folded.push(nameKey(old));
    }
    dimensionNames.set(part.id, names);
  }
  return { folded, partNamed, partNames, dimensionNames };
}

/** From folded name to id, for names that one alone has. */
function unique<I>(named: readonly { readonly id: I; readonly name: string }[]): Map<string, I> {
  const found = new Map<string, I | undefined>();
  for (const { id, name } of named) found.set(nameKey(name), found.has(nameKey(name)) ? undefined : id);
  const single = new Map<string, I>();
  for (const [name, id] of found) if (id !== undefined) single.set(name, id);
  return single;
}
