import { assert } from '../base/assert.ts';
import { changesOver } from './layered-map.ts';
import type { Build, BuildRecord, RecordId } from './records.ts';

/** One change set. Everything that alters a build, undo and redo included, is one of these. */
export interface BuildDiff {
  readonly added: readonly BuildRecord[];
  readonly updated: readonly (readonly [from: BuildRecord, to: BuildRecord])[];
  readonly removed: readonly BuildRecord[];
}

export const emptyDiff: BuildDiff = { added: [], updated: [], removed: [] };

export const isEmpty = (diff: BuildDiff): boolean =>
  diff.added.length + diff.updated.length + diff.removed.length === 0;

/** The diff that takes back `diff`: `apply(apply(b, d), invert(d))` equals `b`. */
export const invert = (diff: BuildDiff): BuildDiff => ({
  added: diff.removed,
  updated: diff.updated.map(([from, to]) => [to, from] as const),
  removed: diff.added,
});

/** Builds of fewer records are copied for each change; larger ones are layered (`layered-map.ts`). */
const COPIED_BELOW = 1_000;

/** @returns a new build; `build` itself is not touched. */
export function apply(build: Build, diff: BuildDiff): Build {
  const next = changesOver<RecordId, BuildRecord>(build, COPIED_BELOW);
  for (const record of diff.removed) {
    assert(next.has(record.id), `a removed record is in the build (${record.id})`);
    next.delete(record.id);
  }
  for (const record of diff.added) {
    assert(!next.has(record.id), `an added record is new to the build (${record.id})`);
    next.put(record.id, record);
  }
  for (const [from, to] of diff.updated) {
    assert(from.id === to.id && next.has(to.id), `an updated record keeps its id (${to.id})`);
    next.put(to.id, to);
  }
  return next.done();
}
