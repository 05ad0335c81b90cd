import type { MaterialId } from '../../../shared/base/ids.ts';
import type { OwnMaterial } from '../../../shared/build/material.ts';
import { nameKey } from '../../../shared/formula/name-key.ts';
import { type Material, materialNamed, materials as table } from '../../../shared/tables/materials.ts';
import type { RowStatus } from '../../../shared/tables/row.ts';
import { defineView, type Scene } from '../view.ts';

/** A material as the window lists it: a row of the build's own, or of the table. */
export interface MaterialLine {
  /** Id of the build's own row; the name of a row of the table. */
  readonly key: string;
  /** Undefined for a row of the table, which is for reading only. */
  readonly own: MaterialId | undefined;
  readonly name: string;
  /** What it is called besides. */
  readonly also: readonly string[];
  /** What is not known is left out. */
  readonly known: OwnMaterial['values'];
  /** Where the values come from; may be empty for a row of the build's own. */
  readonly source: string;
  readonly status: RowStatus | 'own';
  /** A row of the build's own has its name and is taken instead. */
  readonly isBehind: boolean;
  /** Names of the parts that are made of it. */
  readonly usedBy: readonly string[];
}

/** All materials that a part can name: the build's own by name, then the table. */
export const materialsView = defineView<null, readonly MaterialLine[]>({
  open: () => {
    let from: readonly unknown[] = [];
    let lines: readonly MaterialLine[] = [];
    return (scene) => {
      const now = [scene.index.materialRecords(), scene.index.parts()];
      if (!now.every((value, i) => value === from[i])) lines = linesOf(scene);
      from = now;
      return lines;
    };
  },
});

function linesOf({ index }: Scene): readonly MaterialLine[] {
  const own = index.materials();
  const users = new Map<Material, string[]>();
  for (const { material, name } of index.parts()) {
    const row = materialNamed(material, own);
    if (row === undefined) continue;
    const known = users.get(row);
    if (known === undefined) users.set(row, [name]);
    else known.push(name);
  }
  const taken = new Set(own.map(({ name }) => nameKey(name)));
  const ownLines = index.materialRecords().map(({ id, name, values, source }, i): MaterialLine => {
    const usedBy = users.get(own[i]!) ?? [];
    return { key: id, own: id, name, also: [], known: values, source, status: 'own', isBehind: false, usedBy };
  });
  ownLines.sort((a, b) => a.name.localeCompare(b.name, 'en'));
  return [...ownLines, ...table.map((row) => tableLine(row, taken, users.get(row) ?? []))];
}

function tableLine(row: (typeof table)[number], taken: ReadonlySet<string>, usedBy: readonly string[]): MaterialLine {
  const { name, also, source, status, densityKgM3, expansionPerK, modulusGPa, cuttingGroup } = row;
  return {
    key: name,
    own: undefined,
    name,
    also,
    known: {
      ...(densityKgM3 !== undefined && { densityKgM3 }),
      ...(expansionPerK !== undefined && { expansionPerK }),
      ...(modulusGPa !== undefined && { modulusGPa }),
      ...(cuttingGroup !== undefined && { cuttingGroup }),
    },
    source,
    status,
    isBehind: taken.has(nameKey(name)),
    usedBy,
  };
}
