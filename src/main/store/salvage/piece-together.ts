import { idsIn } from '../../../shared/build/body-uses.ts';
import { recordKinds, schemaOf } from '../../../shared/build/kinds.ts';
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
  body: 'bodies',
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
      lost.push({ kind, what: `A ${kind} is not as expected and was left out (${String(id)}: ${why}).` });
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

/** Leaves out what points at something lost; kinds come in an order in which that is found in one pass. */
function dropLoose(found: ReadonlyMap<RecordId, BuildRecord>, lost: Loss[]): readonly BuildRecord[] {
  const kept = new Map<RecordId, BuildRecord>();
  for (const kind of recordKinds) {
    for (const [id, record] of found) {
      if (record.kind !== kind) continue;
      const missing = pointsAt(record).find((target) => !kept.has(target));
      if (missing === undefined) kept.set(id, record);
      else {
        const name = 'name' in record ? ` “${record.name}”` : '';
        lost.push({
          kind,
          id,
          what: `The ${kind}${name} was left out because ${missing}, which it points at, is lost.`,
        });
      }
    }
  }
  return [...kept.values()];
}

function pointsAt(record: BuildRecord): readonly RecordId[] {
  switch (record.kind) {
    case 'station':
      return [record.part];
    case 'dimension':
      return record.measure.type === 'between' ? [record.part, record.measure.from, record.measure.to] : [record.part];
    case 'body':
      return [record.part, ...idsIn(record)];
    case 'settings':
    case 'material':
    case 'part':
    case 'solid':
    case 'acceptance':
      return [];
  }
}
