import { sql } from 'kysely';
import type { BuildRecord, RecordId, RecordKind } from '../../../shared/build/records.ts';
import type { StoreExecutor } from '../schema.ts';

/**
 * How one kind of record lies in its table. Records travel between program and file as JSON text in bulk: a hundred
 * thousand rows take tenths of a second this way, and seconds when bound cell by cell.
 */
export interface RecordTable {
  readonly kind: RecordKind;
  /** Each column and the SQL that takes its cell from the record in `r.value` (JSON). `id` comes first. */
  readonly columns: readonly (readonly [column: string, from: string])[];
  /** The record's fields besides `kind`, each with the SQL that builds its JSON from the row. */
  readonly fields: readonly (readonly [field: string, sql: string])[];
  /** Fields that the record does not have where their cell is NULL, each with its column. */
  readonly optional?: readonly (readonly [field: string, column: string])[];
}

/** One field of a record in one column of its table. */
interface Entry {
  readonly column: RecordTable['columns'][number];
  readonly field: RecordTable['fields'][number];
  readonly optional?: boolean;
}

/** A text, a whole number: the same in the record and in the row. */
export const plain = (field: string, column = snake(field)) => ({
  column: [column, `r.value ->> '$.${field}'`] as const,
  field: [field, `"${column}"`] as const,
});

/** A yes or no: 1 or 0 in the row. */
export const yesNo = (field: string) => ({
  column: [snake(field), `r.value ->> '$.${field}'`] as const,
  field: [field, `json(iif("${snake(field)}", 'true', 'false'))`] as const,
});

/**
 * A number that must come back bit for bit: kept as the decimal text that the program wrote, because SQLite's own
 * conversion between text and floating point is off by one unit in the last place now and then (1 in 7000 measured).
 */
export const exact = (field: string, column: string) => ({
  column: [column, `r.value -> '$.${field}'`] as const,
  field: [field, `json("${column}")`] as const,
});

/** A member of more than one value: JSON in the record and JSON text in the row. */
export const nested = (field: string, column = field) => exact(field, column);

/** A field that a record may be without: its cell is NULL then. */
export const optional = (entry: Entry): Entry => ({ ...entry, optional: true });

/** A table whose every column is one field. */
export const recordTable = (kind: RecordKind, entries: readonly Entry[]): RecordTable => ({
  kind,
  columns: entries.map((e) => e.column),
  fields: entries.map((e) => e.field),
  optional: entries.flatMap((e) => (e.optional ? [[e.field[0], e.column[0]] as const] : [])),
});

/** SQL that gives one row's record as JSON text. */
export function recordJson({ kind, fields, optional: mayLack = [] }: RecordTable): string {
  const whole = `json_object('kind', '${kind}', ${fields.map(([field, from]) => `'${field}', ${from}`).join(', ')})`;
  // Removing what is not there changes nothing.
  const lacking = mayLack.map(([field, column]) => `iif("${column}" is null, '$.${field}', '$.nothing')`);
  return lacking.length === 0 ? whole : `json_remove(${whole}, ${lacking.join(', ')})`;
}

/** @returns all records of the kind as the text of a JSON array, in the order of their rows, and their count. */
export async function selectAll(db: StoreExecutor, table: RecordTable): Promise<{ json: string; count: number }> {
  const { rows } = await sql<{ json: string; count: number }>`
    select json_group_array(json(${sql.raw(recordJson(table))})) as json, count(*) as count
    from (select * from ${sql.table(table.kind)} order by rowid)`.execute(db);
  return rows[0]!;
}

/** @returns those of the given records that are in the table. */
export async function selectById(
  db: StoreExecutor,
  table: RecordTable,
  ids: readonly RecordId[],
): Promise<readonly unknown[]> {
  const { rows } = await sql<{ json: string }>`
    select json_group_array(json(${sql.raw(recordJson(table))})) as json
    from ${sql.table(table.kind)} where id in (select value from json_each(${JSON.stringify(ids)}))`.execute(db);
  return JSON.parse(rows[0]!.json) as unknown[];
}

/** @throws the driver's error when an id is taken. */
export async function insertAll(db: StoreExecutor, table: RecordTable, records: readonly BuildRecord[]): Promise<void> {
  if (records.length === 0) return;
  const columns = table.columns.map(([column]) => `"${column}"`).join(', ');
  const cells = table.columns.map(([, from]) => from).join(', ');
  await sql`
    insert into ${sql.table(table.kind)} (${sql.raw(columns)})
    select ${sql.raw(cells)} from json_each(${JSON.stringify(records)}) as r order by r.key`.execute(db);
}

/** @returns how many rows were there to update. */
export async function updateAll(
  db: StoreExecutor,
  table: RecordTable,
  records: readonly BuildRecord[],
): Promise<number> {
  if (records.length === 0) return 0;
  const assignments = table.columns.slice(1).map(([column, from]) => `"${column}" = ${from}`);
  const { numAffectedRows } = await sql`
    update ${sql.table(table.kind)} set ${sql.raw(assignments.join(', '))}
    from json_each(${JSON.stringify(records)}) as r where ${sql.table(table.kind)}.id = r.value ->> '$.id'`.execute(db);
  return Number(numAffectedRows);
}

/** @returns how many rows were there to delete. */
export async function deleteAll(db: StoreExecutor, table: RecordTable, ids: readonly RecordId[]): Promise<number> {
  if (ids.length === 0) return 0;
  const { numAffectedRows } = await sql`
    delete from ${sql.table(table.kind)}
    where id in (select value from json_each(${JSON.stringify(ids)}))`.execute(db);
  return Number(numAffectedRows);
}

function snake(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
