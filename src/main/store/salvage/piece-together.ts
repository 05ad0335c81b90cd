import { idsIn } from '../../../shared/build/body-uses.ts';
import { recordKinds, schemaOf } from '../../../shared/build/kinds.ts';
import { isPlan, usesOfPlan, withoutGone } from '../../../shared/build/plan-uses.ts';
import type { BuildRecord, RecordId, RecordKind } from '../../../shared/build/records.ts';
import { defaultSettings, SETTINGS_ID } from '../../../shared/build/settings.ts';
import type { Replayed } from './replay.ts';
import type { Salvage } from './salvage.ts';

/** Something that could not be brought over into the recovered file. */
export interface Loss {
  readonly kind: RecordKind | 'history' | 'issue';
  /** The record, where it is known which. */
  readonly id?: RecordId;
  /** One sentence for the user. */
  readonly what: string;
}

const plural: Readonly<Record<RecordKind, string>> = {
  settings: 'settings',
  part: 'parts',
  station: 'stations',
  dimension: 'dimensions',
  solid: 'solids',
  material: 'materials',
  alloy: 'alloys',
  machine: 'machines',
  body: 'bodies',
  setup: 'set-ups',
  operation: 'operations',
  casting: 'castings',
  pattern: 'patterns',
  pour: 'pours',
  acceptance: 'acceptances',
};

/** The document out of what the tables and the journal still hold, with a list of what is missing. */
export function pieceTogether(
  salvaged: Salvage,
  replayed: Replayed,
  nameOfBuild: string,
): { readonly records: readonly BuildRecord[]; readonly lost: readonly Loss[] } {
  const found = new Map<RecordId, BuildRecord>();
  const lost: Loss[] = [];
  for (const kind of recordKinds) {
    const { rows, whole, failed } = salvaged.records[kind];
    const refused: { readonly id: unknown; readonly why: string }[] = [];
    for (const raw of rows) {
      const parsed = schemaOf[kind].safeParse(raw);
      if (parsed.success) found.set(parsed.data.id, parsed.data);
      else refused.push({ id: (raw as { id?: unknown }).id, why: parsed.error.issues[0]?.message ?? '' });
    }
    if (whole && refused.length === 0) continue;
    // The journal knows every record that ever was; where it is whole, nothing of this kind is lost.
    for (const [id, record] of replayed.build) if (record.kind === kind && !found.has(id)) found.set(id, record);
    if (replayed.complete) continue;
    for (const { id, why } of refused) {
      if (found.has(id as RecordId)) continue;
      lost.push({ kind, what: `${aWordOf(kind)} is not as expected and was left out (${String(id)}: ${why}).` });
    }
    if (!whole) lost.push({ kind, what: unreadRows(kind, failed) });
  }
  if (!found.has(SETTINGS_ID)) {
    found.set(SETTINGS_ID, defaultSettings(nameOfBuild));
    lost.push({
      kind: 'settings',
      id: SETTINGS_ID,
      what: 'The build’s settings are lost; those of a new build stand in.',
    });
  }
  return { records: dropLoose(found, lost), lost };
}

const unreadRows = (kind: RecordKind, failed: number): string =>
  failed === 0
    ? `Some of the ${plural[kind]} could not be read.`
    : `Up to ${failed} of the ${plural[kind]} could not be read, or only as they were before their last edits.`;

/**
 * Leaves out what points at something lost. A plan only ceases to name it, where it holds together so. Plans point at each other,
 * so that it is gone over until nothing more falls out.
 */
function dropLoose(found: ReadonlyMap<RecordId, BuildRecord>, lost: Loss[]): readonly BuildRecord[] {
  const kept = new Map(found);
  for (let before = -1; before !== kept.size; ) {
    before = kept.size;
    for (const [id, record] of [...kept]) {
      const missing = new Set(pointsAt(record).filter((target) => !kept.has(target)));
      if (missing.size === 0) continue;
      const mended = isPlan(record) ? withoutGone(record, missing) : record;
      const needed = pointsAt(mended).find((target) => missing.has(target));
      if (needed === undefined) kept.set(id, mended);
      else kept.delete(id);
      const what = `${wordOf(record.kind)}${'name' in record ? ` “${record.name}”` : ''}`;
      lost.push({
        kind: record.kind,
        id,
        what:
          needed === undefined
            ? `The ${what} no longer names ${[...missing].join(', ')}, because that is lost.`
            : `The ${what} was left out because ${needed}, which it points at, is lost.`,
      });
    }
  }
  return recordKinds.flatMap((kind) => [...kept.values()].filter((record) => record.kind === kind));
}

const wordOf = (kind: RecordKind): string => (kind === 'setup' ? 'set-up' : kind);

const aWordOf = (kind: RecordKind): string => `${/^[aeiou]/.test(kind) ? 'An' : 'A'} ${wordOf(kind)}`;

function pointsAt(record: BuildRecord): readonly RecordId[] {
  switch (record.kind) {
    case 'station':
      return [record.part];
    case 'dimension':
      return record.measure.type === 'between' ? [record.part, record.measure.from, record.measure.to] : [record.part];
    case 'body':
      return [record.part, ...idsIn(record)];
    case 'setup':
    case 'operation':
    case 'casting':
    case 'pattern':
    case 'pour':
      return usesOfPlan(record).uses.map((use) => use.id);
    case 'settings':
    case 'material':
    case 'alloy':
    case 'machine':
    case 'part':
    case 'solid':
    case 'acceptance':
      return [];
  }
}
