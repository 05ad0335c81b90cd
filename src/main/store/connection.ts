import sqlite3 from 'sqlite3';
import { BugError } from '../../shared/base/assert.ts';

/** What SQLite can keep in a cell. BigInt is not among them: the driver would bind it as NULL without a word. */
export type Cell = string | number | null;
export type Row = Readonly<Record<string, unknown>>;

/** One open database file, with promises in place of callbacks. Calls must not overlap within a transaction. */
export interface Connection {
  all(sql: string, cells?: readonly unknown[]): Promise<readonly Row[]>;
  run(sql: string, cells?: readonly unknown[]): Promise<{ readonly changes: number; readonly lastId: number }>;
  /** Several statements, without parameters. */
  script(sql: string): Promise<void>;
  close(): Promise<void>;
}

export type OpenMode = 'read' | 'write' | 'create';

const FLAGS: Readonly<Record<OpenMode, number>> = {
  read: sqlite3.OPEN_READONLY,
  write: sqlite3.OPEN_READWRITE,
  create: sqlite3.OPEN_READWRITE | sqlite3.OPEN_CREATE,
};

/** Far above the number of different statements of the store; only a bound. */
const MAX_KEPT_STATEMENTS = 200;

/**
 * @param attach whether SQLite may open a second file on this connection, as its copying does.
 * @throws the driver's error (`code` such as `SQLITE_CANTOPEN`) when the file cannot be opened.
 */
export async function connect(path: string, mode: OpenMode, attach = false): Promise<Connection> {
  const database = await new Promise<sqlite3.Database>((resolve, reject) => {
    const opened = new sqlite3.Database(path, FLAGS[mode], (error) => (error ? reject(error) : resolve(opened)));
  });
  if (!attach) database.configure('limit', sqlite3.LIMIT_ATTACHED, 0);
  const kept = new Map<string, sqlite3.Statement>();

  const prepare = (sql: string): Promise<sqlite3.Statement> => {
    const known = kept.get(sql);
    if (known) return Promise.resolve(known);
    return new Promise((resolve, reject) => {
      const made = database.prepare(sql, (error: Error | null) => {
        if (error) return reject(error);
        if (kept.size >= MAX_KEPT_STATEMENTS) drop(kept.keys().next().value as string);
        kept.set(sql, made);
        resolve(made);
      });
    });
  };
  // After an error the statement is thrown away: an unfinished one would hold its lock on the file.
  const drop = (sql: string): void => {
    kept.get(sql)?.finalize();
    kept.delete(sql);
  };

  return {
    async all(sql, cells = []) {
      const statement = await prepare(sql);
      return new Promise((resolve, reject) => {
        statement.all(toCells(cells), (error: Error | null, rows: readonly Row[]) => {
          if (!error) return resolve(rows);
          drop(sql);
          reject(error);
        });
      });
    },
    async run(sql, cells = []) {
      const statement = await prepare(sql);
      return new Promise((resolve, reject) => {
        statement.run(toCells(cells), function (this: sqlite3.RunResult, error: Error | null) {
          if (!error) return resolve({ changes: this.changes, lastId: this.lastID });
          drop(sql);
          reject(error);
        });
      });
    },
    script: (sql) =>
      new Promise((resolve, reject) => {
        database.exec(sql, (error) => (error ? reject(error) : resolve()));
      }),
    close: () => {
      for (const sql of [...kept.keys()]) drop(sql);
      return new Promise((resolve, reject) => {
        database.close((error) => (error ? reject(error) : resolve()));
      });
    },
  };
}

function toCells(values: readonly unknown[]): Cell[] {
  return values.map((value) => {
    if (value === undefined || value === null) return null;
    if (typeof value === 'string') return value;
    if (typeof value === 'boolean') return value ? 1 : 0;
    if (typeof value === 'number' && Number.isFinite(value)) return value;
    if (typeof value === 'bigint' && BigInt(Number(value)) === value) return Number(value);
    throw new BugError(`A database cell holds text, a finite number or nothing, not ${typeof value} ${String(value)}.`);
  });
}
