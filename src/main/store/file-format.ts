import { Kysely, sql } from 'kysely';
import { type Connection, connect, type OpenMode } from './connection.ts';
import { storeDialect } from './dialect.ts';
import type { Migration } from './migrations/migration.ts';
import type { StoreDb, StoreSchema } from './schema.ts';

/** "WYWR" in the header of every build file: it says what the file is to tools that look there. */
export const APPLICATION_ID = 0x57595752;

/** How long a statement waits for another program's write before it gives up, in ms. */
const BUSY_MS = 3_000;

/**
 * Opens a connection for files of unknown origin: nothing stored in the file may call a function that has side effects
 * (`trusted_schema`), and every page is looked over as it is read (`cell_size_check`).
 */
export async function connectStore(
  path: string,
  mode: OpenMode,
): Promise<{ readonly connection: Connection; readonly db: StoreDb }> {
  const connection = await connect(path, mode);
  try {
    await connection.script(`
      pragma busy_timeout = ${BUSY_MS};
      pragma trusted_schema = off;
      pragma cell_size_check = on;
      pragma foreign_keys = on;
      pragma synchronous = full;`);
  } catch (error) {
    await connection.close();
    throw error;
  }
  return { connection, db: new Kysely<StoreSchema>({ dialect: storeDialect(connection) }) };
}

/** Brings a file, new or old, to the newest of the given versions: all in one transaction or not at all. */
export async function migrate(db: StoreDb, migrations: readonly Migration[]): Promise<void> {
  const present = await readPragma(db, 'user_version');
  const wanted = migrations.slice(present);
  if (wanted.length === 0) return;
  await db.transaction().execute(async (tx) => {
    for (const migration of wanted) await migration.up(tx as unknown as Kysely<unknown>);
    await sql.raw(`pragma application_id = ${APPLICATION_ID}`).execute(tx);
    await sql.raw(`pragma user_version = ${migrations.length}`).execute(tx);
  });
}

/** @returns the number that the file carries under that name. */
export async function readPragma(db: StoreDb, name: 'user_version' | 'application_id'): Promise<number> {
  const { rows } = await sql<Record<string, number>>`${sql.raw(`pragma ${name}`)}`.execute(db);
  return rows[0]?.[name] ?? 0;
}
