import { setImmediate as pause } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { assert } from '../../shared/base/assert.ts';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { BuildDiff } from '../../shared/build/diff.ts';
import { recordKinds, schemaOf } from '../../shared/build/kinds.ts';
import type { BuildRecord, RecordId, RecordKind } from '../../shared/build/records.ts';
import type { StoreExecutor } from './schema.ts';
import { tableOf } from './tables/all.ts';
import { deleteAll, insertAll, selectAll, selectById, updateAll } from './tables/record-table.ts';

export interface Document {
  /** All records as one JSON array. */
  readonly json: string;
  readonly count: number;
}

/** Reads the whole document without validating it. */
export async function readDocument(db: StoreExecutor): Promise<Document> {
  const parts: string[] = [];
  let count = 0;
  for (const kind of recordKinds) {
    const table = await selectAll(db, tableOf[kind]);
    if (table.count === 0) continue;
    parts.push(table.json.slice(1, -1));
    count += table.count;
  }
  return { json: `[${parts.join(',')}]`, count };
}

/** So many records are looked through in one go: a few milliseconds. */
const RECORDS_AT_ONCE = 500;

/**
 * Looks through a whole document, a piece at a time: whatever else is asked meanwhile is answered in between.
 * @param json as {@link readDocument} gives it.
 * @returns why the first unusable record cannot be used, or undefined when all can.
 * @throws SyntaxError when it is no JSON.
 */
export async function findFault(json: string): Promise<string | undefined> {
  const records = JSON.parse(json) as readonly unknown[];
  let settings = 0;
  for (const [i, record] of records.entries()) {
    if (i % RECORDS_AT_ONCE === 0) await pause();
    const { kind, id } = record as BuildRecord;
    const parsed = schemaOf[kind].safeParse(record);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      return `${String(id)}: ${issue?.path.join('.') ?? ''} is not as expected (${issue?.message ?? ''})`;
    }
    if (kind === 'settings') settings += 1;
  }
  return settings === 1 ? undefined : `it holds ${settings} records of settings in place of one`;
}

/** Text that UTF-8 cannot carry (half of a surrogate pair) would come back as another text. */
const HALF_CHARACTER = /\p{Surrogate}/u;

/** @returns what of the diff cannot be written down as it is, in words, or undefined. */
export function findUnwritable(diff: BuildDiff): string | undefined {
  for (const record of [...diff.added, ...diff.updated.map(([, to]) => to)]) {
    for (const [field, value] of Object.entries(record)) {
      if (typeof value === 'string' && HALF_CHARACTER.test(value))
        return `The ${field} of ${record.id} holds half a character. Delete it and type it again.`;
    }
  }
  return undefined;
}

/** Checks that a diff is one that the document may meet at all. @throws BugError otherwise. */
export function assertSound(diff: BuildDiff): void {
  const seen = new Set<RecordId>();
  const once = (id: RecordId) => {
    assert(!seen.has(id), `a diff speaks of each record once (${id})`);
    seen.add(id);
  };
  for (const record of diff.added) once(record.id);
  for (const record of diff.removed) once(record.id);
  for (const [from, to] of diff.updated) {
    assert(from.id === to.id && from.kind === to.kind, `an updated record stays itself (${to.id})`);
    once(to.id);
  }
  for (const record of [...diff.added, ...diff.updated.map(([, to]) => to)]) {
    const parsed = schemaOf[record.kind].safeParse(record);
    assert(parsed.success, `a record fits its schema (${record.id}: ${parsed.error?.issues[0]?.message ?? ''})`);
  }
  assert(!diff.removed.some((record) => record.kind === 'settings'), 'the settings are never removed');
}

/**
 * Writes a diff into the record tables, if what it changes is what is stored.
 * @returns an error when some record to change is not stored as the diff believes; the transaction must then be undone.
 * @throws the driver's error when a reference or check is broken.
 */
export async function writeDiff(db: StoreExecutor, diff: BuildDiff): Promise<Result<undefined, 'stale'>> {
  const before = groupByKind([...diff.removed, ...diff.updated.map(([from]) => from)]);
  for (const [kind, records] of before) {
    const ids = records.map((record) => record.id);
    const stored = new Map((await selectById(db, tableOf[kind], ids)).map((r) => [(r as BuildRecord).id, r]));
    for (const record of records) {
      // Through JSON, as the stored one came: an absent field and one that is undefined are the same there.
      if (!isDeepStrictEqual(stored.get(record.id), JSON.parse(JSON.stringify(record)))) return err('stale');
    }
  }
  for (const [kind, records] of groupByKind(diff.removed)) {
    const ids = records.map((record) => record.id);
    assert((await deleteAll(db, tableOf[kind], ids)) === ids.length, 'every removed record was there');
  }
  for (const [kind, records] of groupByKind(diff.added)) await insertAll(db, tableOf[kind], records);
  for (const [kind, records] of groupByKind(diff.updated.map(([, to]) => to))) {
    assert((await updateAll(db, tableOf[kind], records)) === records.length, 'every updated record was there');
  }
  return ok(undefined);
}

function groupByKind(records: readonly BuildRecord[]): Map<RecordKind, BuildRecord[]> {
  const groups = new Map<RecordKind, BuildRecord[]>();
  for (const record of records) {
    const group = groups.get(record.kind);
    if (group) group.push(record);
    else groups.set(record.kind, [record]);
  }
  return groups;
}
