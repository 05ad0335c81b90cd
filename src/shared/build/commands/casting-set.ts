import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { type Casting, defaultCasting } from '../casting.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { castingOf, recordOf } from '../look-up.ts';
import { withNames } from '../names.ts';
import { checkPlan } from '../plan-guards.ts';
import type { Build } from '../records.ts';

/** Fields of a casting as they are given; one that is undefined is taken out. */
export type CastingFields = Partial<Omit<Casting, 'kind' | 'id' | 'part'>>;

export interface CastingSet {
  readonly part: PartId;
  readonly set: CastingFields;
}

/** Says how the pattern of a part is made. The first time that anything is said of it makes the record. */
export default defineCommand<CastingSet>({
  id: 'casting-set',
  run(build, { part: partId, set }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const from = castingOf(build, partId) ?? defaultCasting(newId('casting'), partId);
    const to: Casting = leaveOutUndefined({ ...from, ...withCastingNames(set) });
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, to);
    if (!holds.ok) return holds;
    draft.put(to);
    return ok({ diff: draft.diff(), label: labelOf(build, part.name, set) });
  },
});

const withCastingNames = (set: CastingFields): CastingFields => ({
  ...set,
  ...(set.lugs ? { lugs: withNames(set.lugs, 'lug') } : {}),
  ...(set.boards ? { boards: withNames(set.boards, 'board') } : {}),
});

const words: Readonly<Partial<Record<keyof CastingFields, string>>> = {
  stockGrade: 'grade of stock',
  stock: 'stock on faces',
  sizeStock: 'stock on sizes',
  copeExtra: 'extra stock of faces that look up',
  closeUnder: 'diameter under which holes are closed',
  coating: 'thickness of the coating',
  glueJoint: 'thickness of glue joints',
  prints: 'core prints',
  foamDensity: 'density of the foam',
};

function labelOf(build: Build, part: string, set: CastingFields): string {
  const fields = Object.entries(set) as (readonly [keyof CastingFields, unknown])[];
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change casting of ${part}`;
  const [field, value] = only;
  switch (field) {
    case 'moulding':
      return `mould ${part} as ${String(value)}`;
    case 'up':
      return value === undefined ? `leave open which way of ${part} is up` : `cast ${part} with ${String(value)} up`;
    case 'sectionAxis':
      return value === undefined ? `cut ${part} into no boards` : `cut ${part} into boards along ${String(value)}`;
    case 'bow':
    case 'flask': {
      const machine = value === undefined ? undefined : recordOf(build, 'machine', String(value));
      return machine ? `take ${machine.name} for ${part}` : `take no ${field} for ${part}`;
    }
    default: {
      const what = `${words[field] ?? field} of ${part}`;
      if (typeof value !== 'string' || field === 'note') return `change ${what}`;
      return value.trim() === '' ? `clear ${what}` : `set ${what} to ${shorten(value.trim())}`;
    }
  }
}
