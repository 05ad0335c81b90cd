import { createHash } from 'node:crypto';
import { copyFile, open, readdir, readFile, stat, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { connect } from '../../src/main/store/connection.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { type Recovery, recover } from '../../src/main/store/recover.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { randomOf } from '../faults/strokes.ts';
import { adding, byId, okOf, partOf, recordsOf, refusalOf, sampleBuild, updating, workbench } from './sample-build.ts';

const bench = workbench();
const PAGE = 4096;

/** A build with a history: enough to spread over some dozens of pages. */
async function edited(): Promise<{ readonly file: string; readonly records: readonly BuildRecord[] }> {
  const file = await bench.file(sampleBuild(12, 5, 14));
  const store = await bench.open(file);
  const part = partOf(3);
  okOf(await store.commit(0, 'add', adding(partOf(50))));
  okOf(await store.commit(1, 'note', updating(part, { ...part, note: 'machined' })));
  okOf(await store.makeIssue({ letter: 'A', title: 'First', note: '' }));
  okOf(await store.commit(2, 'add', adding(partOf(51))));
  okOf(await store.step('undo', 3));
  const records = await recordsOf(store);
  await store.close();
  return { file, records };
}

async function overwrite(file: string, position: number, bytes: Uint8Array): Promise<void> {
  const handle = await open(file, 'r+');
  await handle.write(bytes, 0, bytes.length, position);
  await handle.close();
}

const digest = async (file: string) =>
  createHash('sha256')
    .update(await readFile(file))
    .digest('hex');

/** Recovers and looks at the new file: it must be a sound build, and the damaged one untouched. */
async function recovered(
  file: string,
): Promise<{ readonly recovery: Recovery; readonly records: readonly BuildRecord[] }> {
  const before = await digest(file);
  const target = path.join(await bench.folder(), 'recovered.wayw');
  const recovery = okOf(await recover(file, target));
  expect(await digest(file)).toBe(before);
  const store = await bench.open(target);
  const records = await recordsOf(store);
  expect(recovery.records).toBe(records.length);
  await store.close();
  return { recovery, records };
}

describe('recovering', () => {
  test('a sound file loses nothing, history and issues included', async () => {
    const { file, records } = await edited();
    const target = path.join(await bench.folder(), 'recovered.wayw');
    expect(okOf(await recover(file, target))).toEqual({ records: records.length, historyKept: true, lost: [] });
    const store = await bench.open(target);
    expect(okOf(await store.load())).toMatchObject({ revision: 4, undo: 'note', redo: 'add' });
    expect(await store.issues()).toHaveLength(1);
    okOf(await store.step('redo', 4));
    expect(await recordsOf(store)).toContainEqual(partOf(51));
  });

  test.each([
    ['zeros', () => Buffer.alloc(PAGE)],
    ['noise', (random: () => number) => Buffer.from(Array.from({ length: PAGE }, () => Math.floor(random() * 256)))],
  ])(
    'any one page destroyed by %s: what is found is right, what is lost is said',
    { timeout: 300_000 },
    async (_, bytes) => {
      const { file, records } = await edited();
      const truth = new Map(records.map((record) => [record.id, JSON.stringify(record)]));
      const pages = (await stat(file)).size / PAGE;
      expect(pages).toBeGreaterThan(25);
      const random = randomOf(7);
      let complete = 0;
      for (let page = 0; page < pages; page++) {
        const spoiled = path.join(await bench.folder(), 'spoiled.wayw');
        await copyFile(file, spoiled);
        await overwrite(spoiled, page * PAGE, bytes(random));
        const { recovery, records: found } = await recovered(spoiled);
        const right = found.filter((record) => truth.get(record.id) === JSON.stringify(record)).length;
        // The table or the journal: one destroyed page cannot take both.
        expect(right, `page ${page + 1}: ${JSON.stringify(recovery.lost)}`).toBeGreaterThan(records.length * 0.9);
        if (right === records.length && found.length === records.length) complete += 1;
        else expect(recovery.lost, `page ${page + 1}`).not.toEqual([]);
      }
      // Records live twice, in table and journal, so hardly any page is the only one to know something.
      expect(complete / pages).toBeGreaterThan(0.9);
    },
  );

  test('a file that is cut off anywhere gives what the rest holds', { timeout: 300_000 }, async () => {
    const { file, records } = await edited();
    const ids = new Set(records.map(({ id }) => id));
    const { size } = await stat(file);
    let best = 0;
    for (let cut = size - 1000; cut > 0; cut -= 7 * 1000) {
      const spoiled = path.join(await bench.folder(), 'spoiled.wayw');
      await copyFile(file, spoiled);
      await truncate(spoiled, cut);
      const target = path.join(await bench.folder(), 'recovered.wayw');
      const result = await recover(spoiled, target);
      if (!result.ok) {
        expect(result.error.code).toBe('damaged');
        continue;
      }
      const store = await bench.open(target);
      const found = await recordsOf(store);
      await store.close();
      expect(found.filter(({ id }) => !ids.has(id) && id !== partOf(51).id)).toEqual([]);
      if (found.length < records.length) expect(result.value.lost).not.toEqual([]);
      best = Math.max(best, found.length);
    }
    expect(best).toBe(records.length);
  });

  test('a row that fits no schema is replaced by what the journal knows of it', async () => {
    const { file, records } = await edited();
    const connection = await connect(file, 'write');
    await connection.script(`update part set name = ' ' || name where id = 'part:p2'`);
    await connection.close();
    const store = await bench.open(file);
    expect(refusalOf(await store.load()).code).toBe('damaged');
    await store.close();
    const { recovery, records: found } = await recovered(file);
    expect(byId(found)).toEqual(byId(records));
    expect(recovery).toMatchObject({ historyKept: true, lost: [] });
  });

  test('without the journal, what points at a lost part goes, and is named', async () => {
    const { file, records } = await edited();
    const connection = await connect(file, 'write');
    await connection.script(`pragma foreign_keys = off; delete from journal; delete from part where id = 'part:p2'`);
    await connection.close();
    expect(refusalOf(await openStore(file)).code).toBe('damaged');
    const { recovery, records: found } = await recovered(file);
    const expected = records.filter((r) => r.id !== partOf(2).id && !('part' in r && r.part === partOf(2).id));
    expect(byId(found)).toEqual(byId(expected));
    expect(recovery.historyKept).toBe(false);
    expect(recovery.lost.map(({ kind, id }) => [kind, id])).toContainEqual(['station', 'station:p2s0']);
    expect(recovery.lost.filter(({ kind }) => kind === 'dimension')).toHaveLength(14);
    expect(recovery.lost.filter(({ kind }) => kind === 'history')).toHaveLength(1);
  });

  test('a log of an earlier sitting is read too', async () => {
    const file = await bench.file();
    const store = await bench.open(file);
    okOf(await store.commit(0, 'add', adding(partOf(60))));
    const crashed = path.join(await bench.folder(), 'crashed.wayw');
    await copyFile(file, crashed);
    await copyFile(`${file}-wal`, `${crashed}-wal`);
    await store.close();
    const { records } = await recovered(crashed);
    expect(records).toContainEqual(partOf(60));
  });

  test.each([
    ['empty', ''],
    ['a letter', 'Dear foundry, '.repeat(2000)],
  ])('gives up on a file that is %s, and makes none', async (_, text) => {
    const folder = await bench.folder();
    const file = path.join(folder, 'letter.wayw');
    await writeFile(file, text);
    expect(refusalOf(await recover(file, path.join(folder, 'new.wayw'))).code).toBe('damaged');
    expect(await readdir(folder)).toEqual(['letter.wayw']);
  });

  test('refuses a target that is there, and a file that is not', async () => {
    const { file } = await edited();
    expect(refusalOf(await recover(file, file)).code).toBe('unwritable');
    expect(refusalOf(await recover(`${file}.no`, `${file}.new`)).code).toBe('not-found');
  });
});
