import { mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { listBackups } from '../../src/main/store/backup.ts';
import { adding, okOf, partOf, recordsOf, refusalOf, workbench } from './sample-build.ts';

const bench = workbench();

/** A clock that moves on by a minute with every look. */
function clock(): () => string {
  let minute = 0;
  return () => new Date(Date.UTC(2026, 0, 2, 3, minute++)).toISOString();
}

test('each opening keeps a copy, the last ten of each file', async () => {
  const [one, two] = [await bench.file(), await bench.file()];
  const backups = path.join(await bench.folder(), 'deep', 'backups');
  const now = clock();
  for (let n = 0; n < 12; n++) {
    const store = await bench.open(one, { backups, now });
    okOf(await store.load());
    const copy = okOf(await store.backedUp);
    expect(path.dirname(copy!)).toBe(backups);
    okOf(await store.commit(n, 'add', adding(partOf(100 + n))));
    await store.close();
  }
  const other = await bench.open(two, { backups, now });
  okOf(await other.load());
  okOf(await other.backedUp);

  const copies = await listBackups(one, backups);
  expect(copies).toHaveLength(10);
  expect(await listBackups(two, backups)).toHaveLength(1);
  expect(await readdir(backups)).toHaveLength(11);
  // The oldest kept is that of the third opening: two edits had been made by then.
  const oldest = await recordsOf(await bench.open(copies[0]!));
  expect(oldest.filter(({ id }) => id.startsWith('part:p10'))).toHaveLength(2);
  const newest = await recordsOf(await bench.open(copies[9]!));
  expect(newest.filter(({ id }) => /^part:p1\d\d$/.test(id))).toHaveLength(11);
});

test('editing goes on while a copy is made, and closing waits for it', async () => {
  const file = await bench.file();
  const backups = await bench.folder();
  const store = await bench.open(file, { backups });
  okOf(await store.load());
  okOf(await store.commit(0, 'add', adding(partOf(9))));
  await store.close();
  okOf(await store.backedUp);
  expect(await readdir(path.dirname(file))).toEqual(['frame.wayw']);
});

test('where no copy can be made, the build is open all the same and says why', async () => {
  const file = await bench.file();
  const notAFolder = path.join(await bench.folder(), 'backups');
  await writeFile(notAFolder, '');
  const store = await bench.open(file, { backups: notAFolder });
  okOf(await store.load());
  expect(refusalOf(await store.backedUp).detail).toContain('EEXIST');
  okOf(await store.commit(0, 'add', adding(partOf(9))));
});

test('without a folder, and for reading, no copy is made', async () => {
  const file = await bench.file();
  const store = await bench.open(file);
  expect(okOf(await store.backedUp)).toBeUndefined();
  const backups = await bench.folder();
  const reader = await bench.open(file, { backups });
  okOf(await reader.load());
  expect(okOf(await reader.backedUp)).toBeUndefined();
  expect(await readdir(backups)).toEqual([]);
});

test('a copy elsewhere is a build of its own, and never the build itself', async () => {
  const file = await bench.file();
  const store = await bench.open(file);
  okOf(await store.commit(0, 'add', adding(partOf(9))));
  const folder = path.join(await bench.folder(), 'copies');
  await mkdir(folder);
  const copy = path.join(folder, 'copy.wayw');
  okOf(await store.copyTo(copy));
  expect(refusalOf(await store.copyTo(copy)).code).toBe('unwritable');
  okOf(await store.copyTo(copy, { replace: true }));
  expect(refusalOf(await store.copyTo(file, { replace: true })).code).toBe('unwritable');
  const opened = await bench.open(copy);
  expect(opened.readOnly).toBeUndefined();
  expect(await recordsOf(opened)).toEqual(await recordsOf(store));
  okOf(await opened.step('undo', 1));
});
