import { execFile } from 'node:child_process';
import { copyFile, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import type { Part } from '../../src/shared/build/part.ts';
import { adding, byId, okOf, partOf, recordsOf, refusalOf, sampleBuild, workbench } from '../store/sample-build.ts';

/** A real, small, full disk: a file system in memory, which only the super-user of a Linux machine may make. */
const run = promisify(execFile);
const bench = workbench();
const disk = await mkdtemp(path.join(tmpdir(), 'waywright-disk-'));
const DISK_KB = 3_000;
const mounted =
  process.platform === 'linux' &&
  (await run('mount', ['-t', 'tmpfs', '-o', `size=${DISK_KB}k`, 'waywright-test', disk]).then(
    () => true,
    () => false,
  ));
if (!mounted) console.warn('Skipped: a full disk needs Linux and the right to mount one (run the tests as root).');

describe.skipIf(!mounted)('a full disk', () => {
  afterAll(async () => {
    await run('umount', ['-l', disk]);
    await rm(disk, { recursive: true, force: true });
  });
  beforeAll(() => expect(mounted).toBe(true));

  const filler = path.join(disk, 'filler');
  /** Fills the disk to the last byte, then leaves so much free. */
  async function leaveFree(kb: number): Promise<void> {
    await rm(filler, { force: true });
    const free = await freeKb();
    if (free > kb) await writeFile(filler, Buffer.alloc((free - kb) * 1024, 1));
  }
  async function freeKb(): Promise<number> {
    const { stdout } = await run('df', ['--output=avail', '-k', disk]);
    return Number(stdout.trim().split('\n')[1]);
  }
  const large = (n: number): Part => ({ ...partOf(n), note: String(n % 10).repeat(20_000) });

  test('says so, keeps the document, and takes the edit when there is room again', async () => {
    const file = path.join(disk, 'frame.wayw');
    okOf(await createStore(file, sampleBuild()));
    const store = await bench.open(file);
    let revision = 0;
    for (const kb of [0, 4, 8, 16, 40, 100, 200]) {
      await leaveFree(kb);
      let refused: unknown;
      let n = 1000 + revision;
      // Edit until there is no room.
      while (refused === undefined) {
        const done = await store.commit(revision, 'add', adding(large(n)));
        if (done.ok) {
          revision = done.value.revision;
          n += 1;
        } else refused = done.error;
      }
      expect(refused, `${kb} KB left`).toEqual({ code: 'disk-full' });
      const before = await recordsOf(store);
      expect(before.filter(({ id }) => id === large(n).id)).toEqual([]);
      await rm(filler);
      revision = okOf(await store.commit(revision, 'add', adding(large(n)))).revision;
      expect(await recordsOf(store)).toContainEqual(large(n));
      // Make room for the next round: closing shortens the log.
      revision = okOf(await store.step('undo', revision)).revision;
    }
    const last = await recordsOf(store);
    await leaveFree(0);
    await store.close();
    await rm(filler);
    const again = await bench.open(file);
    expect(byId(await recordsOf(again))).toEqual(byId(last));
    await again.close();
    await rm(file);
  });

  test('a build opens for reading when there is no room even for its lock', async () => {
    const file = path.join(disk, 'frame.wayw');
    okOf(await createStore(file, sampleBuild()));
    await leaveFree(0);
    const opened = await openStore(file);
    // Where not even the copy for reading has room, the refusal has a name.
    if (!opened.ok) expect(opened.error.code).toBe('unreadable');
    else {
      expect(opened.value.readOnly).toEqual({ why: 'file' });
      await opened.value.close();
    }
    await rm(filler);
    await (await bench.open(file)).close();
    await rm(file);
  });

  test('a new build that does not fit leaves nothing behind', async () => {
    await leaveFree(60);
    const file = path.join(disk, 'frame.wayw');
    const many = [...sampleBuild(), ...Array.from({ length: 20 }, (_, n) => large(n + 500))];
    expect(refusalOf(await createStore(file, many))).toEqual({ code: 'disk-full' });
    expect(await readdir(disk)).toEqual(['filler']);
    await rm(filler);
  });

  test('a backup copy that does not fit is said, and the build is open', async () => {
    const file = await bench.file([...sampleBuild(), ...Array.from({ length: 20 }, (_, n) => large(n + 500))]);
    await leaveFree(100);
    const store = await bench.open(file, { backups: path.join(disk, 'backups') });
    okOf(await store.load());
    expect(refusalOf(await store.backedUp).detail).not.toBe('');
    expect(await readdir(path.join(disk, 'backups'))).toEqual([]);
    okOf(await store.commit(0, 'add', adding(partOf(99))));
    await rm(filler);
  });
});

describe.skipIf(!mounted)('a disk that may only be read', () => {
  test('opens a build for reading, with a log of an earlier sitting too', async () => {
    const original = await bench.file();
    const editing = await bench.open(original);
    okOf(await editing.commit(0, 'add', adding(partOf(99))));
    const folder = await bench.folder();
    const file = path.join(folder, 'frame.wayw');
    // What a kill leaves: the file and its log.
    await copyFile(original, file);
    await copyFile(`${original}-wal`, `${file}-wal`);
    await editing.close();
    await run('mount', ['--bind', folder, folder]);
    try {
      await run('mount', ['-o', 'remount,bind,ro', folder]);
      const store = await bench.open(file);
      expect(store.readOnly).toEqual({ why: 'file' });
      expect(byId(await recordsOf(store))).toEqual(byId([...sampleBuild(), partOf(99)]));
      expect(refusalOf(await store.commit(1, 'add', adding(partOf(9))))).toEqual({ code: 'read-only' });
      await store.close();
      expect(refusalOf(await createStore(path.join(folder, 'new.wayw'), sampleBuild())).code).toBe('unwritable');
      expect(await readdir(folder)).toEqual(['frame.wayw', 'frame.wayw-wal']);
    } finally {
      await run('umount', ['-l', folder]);
    }
  });
});
