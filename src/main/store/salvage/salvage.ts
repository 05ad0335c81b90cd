import { recordKinds } from '../../../shared/build/kinds.ts';
import type { RecordKind } from '../../../shared/build/records.ts';
import { connect } from '../connection.ts';
import { tableOf } from '../tables/all.ts';
import { recordJson } from '../tables/record-table.ts';
import { padCopy, replaceTableList } from './mend-copy.ts';
import { type ReadRows, readRows } from './read-rows.ts';

/** Everything that could be read of a damaged file, nothing of it validated. */
export interface Salvage {
  readonly records: Readonly<Record<RecordKind, ReadRows>>;
  readonly journal: ReadRows;
  readonly issues: ReadRows;
  readonly meta: ReadRows;
}

const JOURNAL = `json_object('seq', seq, 'state', state, 'label', label, 'diff', json(diff), 'at', at)`;
const ISSUE = `json_object('letter', letter, 'title', title, 'note', note, 'issued_at', issued_at, 'revision', revision,
  'content', json(content))`;
const META = `json_object('revision', revision, 'created_at', created_at)`;

/** Reads what there is to read of a private copy, which is changed on the way. */
export async function salvage(copy: string): Promise<Salvage> {
  await padCopy(copy);
  const first = await readEverything(copy);
  if (first && isWhole(first)) return first;
  // The list of tables itself may be destroyed.
  await replaceTableList(copy);
  const second = await readEverything(copy);
  const best = [first, second].filter((s) => s !== undefined).sort((a, b) => countRows(b) - countRows(a))[0];
  return best ?? nothing;
}

async function readEverything(copy: string): Promise<Salvage | undefined> {
  const connection = await connect(copy, 'write').catch(() => undefined);
  if (!connection) return undefined;
  try {
    // With `writable_schema` SQLite goes on past faults in the list of tables and in the size of the file.
    await connection.script('pragma trusted_schema = off; pragma writable_schema = on; pragma foreign_keys = off;');
    const records = {} as Record<RecordKind, ReadRows>;
    for (const kind of recordKinds) records[kind] = await readRows(connection, kind, recordJson(tableOf[kind]));
    return {
      records,
      journal: await readRows(connection, 'journal', JOURNAL),
      issues: await readRows(connection, 'drawing_issue', ISSUE),
      meta: await readRows(connection, 'meta', META),
    };
  } catch {
    return undefined;
  } finally {
    await connection.close().catch(() => undefined);
  }
}

const parts = ({ records, journal, issues }: Salvage): readonly ReadRows[] => [
  ...recordKinds.map((kind) => records[kind]),
  journal,
  issues,
];
const isWhole = (salvaged: Salvage): boolean => parts(salvaged).every(({ whole }) => whole);
const countRows = (salvaged: Salvage): number => parts(salvaged).reduce((sum, { rows }) => sum + rows.length, 0);

const none: ReadRows = { rows: [], failed: 0, whole: false };
const nothing: Salvage = {
  records: {
    settings: none,
    material: none,
    alloy: none,
    machine: none,
    part: none,
    station: none,
    dimension: none,
    solid: none,
    body: none,
    setup: none,
    operation: none,
    casting: none,
    pattern: none,
    pour: none,
    acceptance: none,
  },
  journal: none,
  issues: none,
  meta: none,
};
