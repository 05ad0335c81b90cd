import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import type { Connection } from './connection.ts';

/** Speaks SQLite over one open connection. Queries wait for each other; a transaction keeps the connection to itself. */
export const storeDialect = (connection: Connection): Dialect => ({
  createAdapter: () => new SqliteAdapter(),
  createIntrospector: (db) => new SqliteIntrospector(db),
  createQueryCompiler: () => new SqliteQueryCompiler(),
  createDriver: () => storeDriver(connection),
});

/** Statements that hand back rows; all others report what they changed. */
const HANDS_BACK_ROWS = /^\s*(select|with|pragma|values|explain)\b|\breturning\b/i;

function storeDriver(connection: Connection): Driver {
  const turn = takingTurns();
  const single: DatabaseConnection = {
    async executeQuery<R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> {
      if (HANDS_BACK_ROWS.test(sql)) return { rows: (await connection.all(sql, parameters)) as R[] };
      const { changes, lastId } = await connection.run(sql, parameters);
      return { rows: [], numAffectedRows: BigInt(changes), insertId: BigInt(lastId) };
    },
    // biome-ignore lint/correctness/useYield: streaming is part of the driver's shape, and unused here.
    async *streamQuery() {
      throw new Error('This driver reads whole results.');
    },
  };
  return {
    init: async () => {},
    acquireConnection: async () => {
      await turn.take();
      return single;
    },
    releaseConnection: async () => turn.give(),
    // IMMEDIATE: the lock is taken now, so a transaction never fails half way because another one was faster.
    beginTransaction: async (c) => void (await c.executeQuery(CompiledQuery.raw('begin immediate'))),
    commitTransaction: async (c) => void (await c.executeQuery(CompiledQuery.raw('commit'))),
    // After a full disk SQLite has already rolled back by itself; that must not hide the first error.
    rollbackTransaction: async (c) => void (await c.executeQuery(CompiledQuery.raw('rollback')).catch(() => undefined)),
    destroy: () => connection.close(),
  };
}

/** First come, first served. */
function takingTurns(): { take(): Promise<void>; give(): void } {
  const waiting: (() => void)[] = [];
  let busy = false;
  return {
    take: () => {
      if (busy) return new Promise((resolve) => waiting.push(resolve));
      busy = true;
      return Promise.resolve();
    },
    give: () => {
      const next = waiting.shift();
      if (next) next();
      else busy = false;
    },
  };
}
