import type { RecordId } from '../../shared/build/records.ts';
import { nameKey } from '../../shared/formula/name-key.ts';
import { notifyOutcome } from '../app/notices.ts';
import type { Engine, RunOutcome } from '../engine/engine.ts';
import type { MaterialLine } from '../engine/views/materials.ts';
import { openMaterials } from './wanted.ts';

/** The line of that name: of the build's own first, then of the table, whose rows have several names. */
export function lineNamed(lines: readonly MaterialLine[], name: string): MaterialLine | undefined {
  const key = nameKey(name);
  const own = lines.find((line) => line.own !== undefined && nameKey(line.name) === key);
  return (
    own ?? lines.find(({ own, name, also }) => own === undefined && [name, ...also].some((n) => nameKey(n) === key))
  );
}

/** A name that no row of the build's own has yet. */
function freeName(lines: readonly MaterialLine[], wished: string): string {
  const taken = new Set(lines.flatMap(({ own, name }) => (own === undefined ? [] : [nameKey(name)])));
  let name = wished;
  for (let n = 2; taken.has(nameKey(name)); n++) name = `${wished} ${n}`;
  return name;
}

interface Added {
  readonly outcome: RunOutcome;
  /** Key of its line; undefined when it was refused. */
  readonly row: RecordId | undefined;
}

/** Adds a row of the build's own, empty or with the values of another. */
export async function addMaterial(
  engine: Engine,
  lines: readonly MaterialLine[],
  from?: Pick<MaterialLine, 'name' | 'known' | 'source'>,
): Promise<Added> {
  const { name, known, source } = from ?? { name: 'new material', known: {}, source: '' };
  const material = { name: freeName(lines, name), values: known, source };
  const outcome = await engine.run('material-add', { material });
  return { outcome, row: outcome.ok ? outcome.added[0] : undefined };
}

/** Opens the material of that name where its density is written; the build gets a row for it if it has none. */
export async function giveFigures(engine: Engine, lines: readonly MaterialLine[], name: string): Promise<void> {
  const line = lineNamed(lines, name);
  if (line?.own !== undefined) return openMaterials(line.key, 'densityKgM3');
  const { known, source } = line ?? { known: {}, source: '' };
  const { outcome, row } = await addMaterial(engine, lines, { name: name.trim(), known, source });
  if (notifyOutcome(outcome).ok) openMaterials(row, 'densityKgM3');
}
