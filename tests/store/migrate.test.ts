import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { listBackups } from '../../src/main/store/backup.ts';
import { connect } from '../../src/main/store/connection.ts';
import type { Migration } from '../../src/main/store/migrations/migration.ts';
import { migrations } from '../../src/main/store/migrations/registry.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { adding, byId, okOf, partOf, recordsOf, refusalOf, sampleBuild, workbench } from './sample-build.ts';

const bench = workbench();

/** Versions to come, for seeing how files of today fare with them. */
const next: Migration = {
  version: migrations.length + 1,
  title: 'A table more',
  up: async (db) => void (await sql`create table melt (id text not null primary key) strict`.execute(db)),
};
const failing: Migration = {
  version: migrations.length + 2,
  title: 'One that fails half way',
  async up(db) {
    await sql`create table half (id text) strict`.execute(db);
    await sql`insert into half select 1 from no_such_table`.execute(db);
  },
};

async function versionOf(file: string): Promise<unknown> {
  const connection = await connect(file, 'read');
  const [row] = await connection.all('pragma user_version');
  await connection.close();
  return row?.user_version;
}

describe('a file of an older version', () => {
  test('is brought up, once a copy of it as it was is kept', async () => {
    const file = await bench.file();
    const backups = path.join(await bench.folder(), 'backups');
    const store = await bench.open(file, { migrations: [...migrations, next], backups });
    okOf(await store.commit(0, 'add', adding(partOf(9))));
    await store.close();
    expect(await versionOf(file)).toBe(next.version);
    const [copy] = await listBackups(file, backups);
    expect(await versionOf(copy!)).toBe(migrations.length);
    // Today's program then refuses it politely.
    expect(refusalOf(await openStore(file))).toMatchObject({ code: 'newer-version', version: next.version });
  });

  test('stays as it was when a migration fails', async () => {
    const file = await bench.file();
    const refusal = refusalOf(await openStore(file, { migrations: [...migrations, next, failing] }));
    expect(refusal).toMatchObject({ code: 'unreadable', detail: expect.stringContaining('no_such_table') });
    expect(await readdir(path.dirname(file))).toEqual(['frame.wayw']);
    expect(await versionOf(file)).toBe(migrations.length);
    expect(byId(await recordsOf(await bench.open(file)))).toEqual(byId(sampleBuild()));
  });

  test('is brought up in a private copy when it may only be read', async () => {
    const file = await bench.file();
    const store = await bench.open(file, { migrations: [...migrations, next], readOnly: true });
    expect(byId(await recordsOf(store))).toEqual(byId(sampleBuild()));
    await store.close();
    expect(await versionOf(file)).toBe(migrations.length);
  });
});
