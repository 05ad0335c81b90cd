import type { BuildDiff } from './diff.ts';
import type { Build, BuildRecord, RecordId } from './records.ts';

/** Changes being gathered over a build that itself stays as it is. */
export interface Draft {
  /** The record as it stands with the changes so far. */
  get(id: RecordId): BuildRecord | undefined;
  put(record: BuildRecord): void;
  remove(id: RecordId): void;
  /** What has changed, each record once; a record put back as it was is not in it. */
  diff(): BuildDiff;
}

/** Whether two records say the same, field by field (a dimension's measure by its own fields). */
export function sameRecord(a: BuildRecord, b: BuildRecord): boolean {
  if (a === b) return true;
  return sameFields(a, b);
}

function sameFields(a: object, b: object): boolean {
  const left = Object.entries(a);
  if (left.length !== Object.keys(b).length) return false;
  return left.every(([key, value]) => {
    const other: unknown = (b as Record<string, unknown>)[key];
    if (typeof value === 'object' && value !== null && typeof other === 'object' && other !== null) {
      return sameFields(value, other);
    }
    return Object.is(value, other);
  });
}

export function draftOf(build: Build): Draft {
  const changes = new Map<RecordId, BuildRecord | undefined>();
  return {
    get: (id) => (changes.has(id) ? changes.get(id) : build.get(id)),
    put: (record) => void changes.set(record.id, record),
    remove: (id) => void changes.set(id, undefined),
    diff() {
      const added: BuildRecord[] = [];
      const updated: (readonly [BuildRecord, BuildRecord])[] = [];
      const removed: BuildRecord[] = [];
      for (const [id, to] of changes) {
        const from = build.get(id);
        if (from && to) {
          if (!sameRecord(from, to)) updated.push([from, to]);
        } else if (from) removed.push(from);
        else if (to) added.push(to);
      }
      return { added, updated, removed };
    },
  };
}
