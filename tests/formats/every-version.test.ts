import { copyFile, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { connectStore, migrate } from '../../src/main/store/file-format.ts';
import { migrations, NEWEST_VERSION } from '../../src/main/store/migrations/registry.ts';
import { recordKinds, schemaOf } from '../../src/shared/build/kinds.ts';
import { tableOf } from '../../src/main/store/tables/all.ts';
import { okOf, recordsOf, workbench } from '../store/sample-build.ts';

/**
 * A real file of every version that was ever written is kept here and opens for ever. `version-N.json` holds what it
 * must read as today; a migration that changes what old records mean changes that file knowingly.
 */
const bench = workbench();
const here = fileURLToPath(new URL('.', import.meta.url));
const versions = migrations.map(({ version }) => version);

describe.each(versions)('a file of version %i', (version) => {
  test('opens, reads as it must, and can be edited and stepped through', async () => {
    const file = path.join(await bench.folder(), 'kept.wayw');
    await copyFile(path.join(here, `version-${version}.wayw`), file);
    const expected = JSON.parse(await readFile(path.join(here, `version-${version}.json`), 'utf8'));
    const store = await bench.open(file);
    const { revision, undo, redo } = okOf(await store.load());
    expect({ revision, undo, redo, records: await recordsOf(store), issues: await store.issues() }).toEqual(expected);
    okOf(await store.step('undo', revision));
    okOf(await store.step('redo', revision + 1));
    okOf(await store.step('redo', revision + 2));
    await store.close();
    expect(await readdir(path.dirname(file))).toEqual(['kept.wayw']);
  });
});

test('every version has a kept file, and every kept file a version', async () => {
  const kept = (await readdir(here)).filter((name) => name.endsWith('.wayw')).sort();
  expect(kept).toEqual(versions.map((version) => `version-${version}.wayw`));
  expect(NEWEST_VERSION).toBeGreaterThan(0);
});

test('the tables are those written down: a change of them is a new migration, never an edit of an old one', async () => {
  const { db } = await connectStore(':memory:', 'create');
  await migrate(db, migrations);
  const { rows } = await sql<{ sql: string }>`
    select sql from sqlite_schema where sql is not null order by rowid`.execute(db);
  await db.destroy();
  await expect(rows.map((row) => `${row.sql};\n`).join('\n')).toMatchFileSnapshot('newest-tables.sql');
});

test('every field of every kind of record has its place in a table', () => {
  for (const kind of recordKinds) {
    const fields = Object.keys(schemaOf[kind].shape).filter((field) => field !== 'kind');
    expect(tableOf[kind].fields.map(([field]) => field)).toEqual(fields);
  }
});
