import type { DimensionId, PartId } from '../base/ids.ts';
import type { BuildDiff } from '../build/diff.ts';
import { bodiesNeeding, plansNaming } from '../build/look-up.ts';
import type { Build } from '../build/records.ts';
import type { Drawing, DrawingChange } from '../drawing/drawing.ts';
import { keepList } from './keep.ts';
import { ownerOf } from './part-records.ts';
import type { PartFacts } from './rule.ts';

/** The dimensions that a diff speaks of, as they were before it: whose they were and what their formulas named. */
export type Before = ReadonlyMap<DimensionId, { readonly part: PartId; readonly references: readonly DimensionId[] }>;

export function beforeOf(diff: BuildDiff, build: Build, drawing: Drawing): Before {
  const before = new Map<DimensionId, { part: PartId; references: readonly DimensionId[] }>();
  for (const record of [...diff.removed, ...diff.updated.map(([from]) => from)]) {
    if (record.kind !== 'dimension' || !build.has(record.id)) continue;
    before.set(record.id, { part: record.part, references: drawing.dimension(record.id).references });
  }
  return before;
}

export interface Touched {
  /** Parts whose facts may differ; some may be gone. */
  readonly parts: ReadonlySet<PartId>;
  /** Whether any formula names other dimensions than before. */
  readonly links: boolean;
}

/** Finds the parts whose facts an edit may have changed: of its records, and of what formulas named before or name now. */
export function touchedParts(
  diff: BuildDiff,
  change: DrawingChange,
  before: Before,
  build: Build,
  drawing: Drawing,
  factsOf: (part: PartId) => PartFacts | undefined,
): Touched {
  const parts = new Set<PartId>();
  let links = false;
  const add = (part: PartId | undefined): void => {
    if (part) parts.add(part);
  };
  const owner = (id: DimensionId): PartId | undefined => ownerOf(build.get(id));
  for (const record of [...diff.added, ...diff.removed, ...diff.updated.flat()]) add(ownerOf(record));
  for (const { part } of change.axes) add(part);
  // A mesh is of the build; its bodies are of parts.
  const meshes = new Set<string>();
  // A part that is held as a fellow has its operations in a set-up of another.
  const setups = new Set<string>();
  for (const record of [...diff.added, ...diff.removed, ...diff.updated.flat()]) {
    if (record.kind === 'solid') meshes.add(record.id);
    if (record.kind === 'setup') setups.add(record.id);
  }
  if (meshes.size > 0) for (const { part } of bodiesNeeding(build, meshes)) add(part);
  if (setups.size > 0) for (const plan of plansNaming(build, setups)) if (plan.kind === 'operation') add(plan.part);

  const known = new Map<PartId, ReadonlyMap<DimensionId, readonly DimensionId[]>>();
  const earlierReferences = (id: DimensionId): readonly DimensionId[] => {
    const told = before.get(id);
    if (told) return told.references;
    const part = owner(id);
    if (!part) return [];
    let byId = known.get(part);
    if (!byId) {
      byId = new Map(factsOf(part)?.dimensions.map((fact) => [fact.record.id, fact.resolved.references]));
      known.set(part, byId);
    }
    return byId.get(id) ?? [];
  };
  const dimensions = new Set<DimensionId>([...change.dimensions, ...before.keys()]);
  for (const record of diff.added) if (record.kind === 'dimension') dimensions.add(record.id);
  for (const id of dimensions) {
    add(owner(id));
    const earlier = earlierReferences(id);
    const now = build.has(id) ? drawing.dimension(id).references : [];
    if (keepList(earlier, now) === earlier) continue;
    links = true;
    for (const reference of [...earlier, ...now]) add(owner(reference));
  }
  return { parts, links };
}
