import { createHash } from 'node:crypto';
import { chmod, copyFile, mkdir, open, readdir, readFile, stat, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { connect } from '../../src/main/store/connection.ts';
import { NEWEST_VERSION } from '../../src/main/store/migrations/registry.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import type { OpenError } from '../../src/shared/ipc/contract.ts';
import { adding, byId, okOf, partOf, recordsOf, refusalOf, sampleBuild, workbench } from './sample-build.ts';

const bench = workbench();

const digest = async (file: string): Promise<string> =>
  createHash('sha256')
    .update(await readFile(file))
    .digest('hex');

/** Everything in the folder with its content: nothing may change and nothing may be left behind. */
async function picture(folder: string): Promise<Record<string, string>> {
  const names = await readdir(folder, { withFileTypes: true });
  const files = names.filter((name) => name.isFile()).map(({ name }) => name);
  return Object.fromEntries(
    await Promise.all(files.map(async (name) => [name, await digest(path.join(folder, name))])),
  );
}

async function writeAt(file: string, position: number, bytes: Uint8Array): Promise<void> {
  const handle = await open(file, 'r+');
  await handle.write(bytes, 0, bytes.length, position);
  await handle.close();
}

async function run(file: string, sql: string): Promise<void> {
  const connection = await connect(file, 'write');
  await connection.script(sql);
  await connection.close();
}

const big = () => sampleBuild(20, 6, 30);

describe('a file that is no sound build is refused with a code, and stays byte for byte', () => {
  const cases: readonly (readonly [
    name: string,
    code: OpenError['code'],
    spoil: (file: string) => Promise<unknown>,
  ])[] = [
    ['empty', 'not-a-build', (f) => truncate(f, 0)],
    ['a few bytes', 'not-a-build', (f) => writeFile(f, 'hello')],
    ['a text', 'not-a-build', (f) => writeFile(f, 'A letter to the foundry. '.repeat(500))],
    ['the JSON form', 'not-a-build', (f) => writeFile(f, '{"format":"waywright-build","records":["settings:build"]}')],
    ['zeros', 'not-a-build', (f) => writeFile(f, Buffer.alloc(20_000))],
    ['another database', 'not-a-build', (f) => run(f, 'pragma application_id = 7')],
    ['made by a newer version', 'newer-version', (f) => run(f, 'pragma user_version = 999')],
    ['without a version', 'damaged', (f) => run(f, 'pragma user_version = 0')],
    ['the first bytes destroyed', 'damaged', (f) => writeAt(f, 0, Buffer.alloc(16, 0xaa))],
    ['the whole first page destroyed', 'damaged', (f) => writeAt(f, 0, Buffer.alloc(4096, 0xaa))],
    ['the list of tables destroyed', 'damaged', (f) => writeAt(f, 100, Buffer.alloc(3000, 0xaa))],
    ['a nonsensical page size', 'damaged', (f) => writeAt(f, 16, Buffer.from([0x12, 0x34]))],
    ['a table page destroyed', 'damaged', (f) => writeAt(f, 4096 * 20, Buffer.alloc(4096, 0x5a))],
    ['cut off', 'damaged', async (f) => truncate(f, Math.floor(((await stat(f)).size * 2) / 3 / 4096) * 4096)],
    ['cut off in a page', 'damaged', async (f) => truncate(f, (await stat(f)).size - 1000)],
    [
      'with a trigger from elsewhere',
      'damaged',
      (f) => run(f, 'create trigger t after insert on part begin delete from station; end'),
    ],
    [
      'with a view in place of a table',
      'damaged',
      (f) => run(f, 'drop table acceptance; create view acceptance as select 1 as id'),
    ],
    ['with a table less', 'damaged', (f) => run(f, 'drop table drawing_issue')],
    [
      'with a pointer at nothing',
      'damaged',
      (f) => run(f, `pragma foreign_keys = off; delete from part where id = 'part:p0'`),
    ],
    [
      'with a check broken',
      'damaged',
      (f) => run(f, `pragma ignore_check_constraints = on; update part set quantity = 0`),
    ],
  ];
  test.each(cases)('%s', async (_, code, spoil) => {
    const file = await bench.file(big());
    await spoil(file);
    const before = await picture(path.dirname(file));
    expect(refusalOf(await openStore(file))).toMatchObject({ code, path: file });
    expect(await picture(path.dirname(file))).toEqual(before);
    expect(refusalOf(await openStore(file, { readOnly: true }))).toMatchObject({ code, path: file });
    expect(await picture(path.dirname(file))).toEqual(before);
  });

  test('a newer version says which, and which is the newest known', async () => {
    const file = await bench.file();
    await run(file, 'pragma user_version = 999');
    expect(refusalOf(await openStore(file))).toEqual({
      code: 'newer-version',
      path: file,
      version: 999,
      newest: NEWEST_VERSION,
    });
  });

  test('a row of no schema is found when loading', async () => {
    const file = await bench.file();
    await run(file, `update part set name = ' blank at the ends '`);
    const error = refusalOf(await (await bench.open(file)).load());
    expect(error).toMatchObject({ code: 'damaged', detail: expect.stringContaining('part:p0') });
  });

  test('a file that is not there, a folder, a file that is too large', async () => {
    const folder = await bench.folder();
    const missing = path.join(folder, 'no.wayw');
    expect(refusalOf(await openStore(missing))).toEqual({ code: 'not-found', path: missing });
    await mkdir(path.join(folder, 'folder.wayw'));
    expect(refusalOf(await openStore(path.join(folder, 'folder.wayw'))).code).toBe('unreadable');
    const huge = path.join(folder, 'huge.wayw');
    await writeFile(huge, 'SQLite format 3\0');
    await truncate(huge, 600 * 1024 * 1024);
    expect(refusalOf(await openStore(huge))).toMatchObject({
      code: 'unreadable',
      detail: expect.stringContaining('512'),
    });
    expect((await readdir(folder)).sort()).toEqual(['folder.wayw', 'huge.wayw']);
  });

  test('a damaged file with a log of an earlier sitting is not written back', async () => {
    const file = await bench.file(big());
    const store = await bench.open(file);
    okOf(await store.commit(0, 'add', adding(partOf(99))));
    const crashed = path.join(await bench.folder(), 'crashed.wayw');
    // What a kill leaves: the file and its log. Copies, because the original is open here.
    await copyFile(file, crashed);
    await copyFile(`${file}-wal`, `${crashed}-wal`);
    await store.close();
    await writeAt(crashed, 4096 * 20, Buffer.alloc(4096, 0x5a));
    const before = await picture(path.dirname(crashed));
    expect(Object.keys(before)).toHaveLength(2);
    expect(refusalOf(await openStore(crashed)).code).toBe('damaged');
    expect(await picture(path.dirname(crashed))).toEqual(before);
  });
});

test('a file that was in another journal mode opens and works', async () => {
  const file = await bench.file();
  await run(file, 'pragma journal_mode = delete');
  const store = await bench.open(file);
  okOf(await store.commit(0, 'add', adding(partOf(99))));
  expect(await recordsOf(store)).toContainEqual(partOf(99));
});

describe.skipIf(process.platform === 'win32')('files that may not be written or read', () => {
  // The super-user may do anything; these run where permissions mean something.
  const asUser = process.getuid?.() === 0 ? test.skip : test;
  asUser('open for reading when the file may not be written', async () => {
    const file = await bench.file();
    await chmod(file, 0o444);
    const store = await bench.open(file);
    expect(store.readOnly).toEqual({ why: 'file' });
    expect(byId(await recordsOf(store))).toEqual(byId(sampleBuild()));
  });
  asUser('say so when the file may not be read', async () => {
    const file = await bench.file();
    await chmod(file, 0o000);
    expect(refusalOf(await openStore(file)).code).toBe('unreadable');
  });
});
