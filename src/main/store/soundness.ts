import { isDeepStrictEqual } from 'node:util';
import { sql } from 'kysely';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { OpenError } from '../../shared/ipc/contract.ts';
import { APPLICATION_ID, connectStore, migrate, readPragma } from './file-format.ts';
import type { Migration } from './migrations/migration.ts';
import type { StoreDb } from './schema.ts';

/**
 * Whether an open file is whole and holds exactly the tables of its version: no page is damaged, nothing was added
 * (a trigger in a file from elsewhere would run with every edit), and no record points at nothing.
 * @returns the version.
 * @throws the driver's error when the file cannot be read at all.
 */
export async function checkSound(
  db: StoreDb,
  file: string,
  migrations: readonly Migration[],
): Promise<Result<number, OpenError>> {
  const damaged = (detail: string) => err({ code: 'damaged', path: file, detail } as const);

  if ((await readPragma(db, 'application_id')) !== APPLICATION_ID) return err({ code: 'not-a-build', path: file });
  const version = await readPragma(db, 'user_version');
  const newest = migrations.length;
  if (version > newest) return err({ code: 'newer-version', path: file, version, newest });
  if (version < 1) return damaged('It carries no version.');

  // Another database, in memory: it is made while the pages of this one are looked through.
  const expected = objectsOf(migrations.slice(0, version));
  const pages = await sql<{ quick_check: string }>`pragma quick_check(1)`.execute(db);
  const verdict = pages.rows[0]?.quick_check ?? 'no answer';
  const wanted = await expected;
  if (verdict !== 'ok') return damaged(verdict);
  const objects = await readObjects(db);
  if (!isDeepStrictEqual(objects, wanted)) {
    return damaged(`Its tables are not those of a build of version ${version}.`);
  }
  const loose = await sql<{ table: string; parent: string }>`pragma foreign_key_check`.execute(db);
  if (loose.rows[0]) {
    const { table, parent } = loose.rows[0];
    return damaged(`${loose.rows.length} of its records point at nothing (the first: a ${table} at a ${parent}).`);
  }
  return ok(version);
}

interface SchemaObject {
  readonly type: string;
  readonly name: string;
  readonly sql: string | null;
}

async function readObjects(db: StoreDb): Promise<readonly SchemaObject[]> {
  const { rows } = await sql<SchemaObject>`select type, name, sql from sqlite_schema order by type, name`.execute(db);
  return rows;
}

const known = new Map<string, readonly SchemaObject[]>();

/** What a new file holds after the given migrations, from one made in memory. */
async function objectsOf(migrations: readonly Migration[]): Promise<readonly SchemaObject[]> {
  const key = migrations.map(({ version, title }) => `${version} ${title}`).join('\n');
  const found = known.get(key);
  if (found) return found;
  const { db } = await connectStore(':memory:', 'create');
  try {
    await migrate(db, migrations);
    const objects = await readObjects(db);
    known.set(key, objects);
    return objects;
  } finally {
    await db.destroy();
  }
}
