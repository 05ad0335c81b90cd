import { copyFile, open } from 'node:fs/promises';
import path from 'node:path';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { connectStore } from '../../src/main/store/file-format.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { recover } from '../../src/main/store/recover.ts';
import { BugError } from '../../src/shared/base/assert.ts';
import type { Body } from '../../src/shared/build/body.ts';
import { idsIn } from '../../src/shared/build/body-uses.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { everyShape } from '../support/sketch-bodies.ts';
import { adding, byId, okOf, recordsOf, refusalOf, removing, updating, workbench } from './sample-build.ts';

const bench = workbench();
const bodiesIn = (records: readonly BuildRecord[]) =>
  records.filter((record): record is Body => record.kind === 'body');

async function usesIn(file: string): Promise<readonly { body: string; target: string }[]> {
  const { db } = await connectStore(file, 'read');
  const { rows } = await sql<{ body: string; target: string }>`
    select body, coalesce(station, dimension, solid) as target from body_use order by body, target`.execute(db);
  await db.destroy();
  return rows;
}

const usesOfAll = (bodies: readonly Body[]) =>
  bodies
    .flatMap((body) => idsIn(body).map((target) => ({ body: body.id as string, target: target as string })))
    .sort((a, b) => (a.body === b.body ? (a.target < b.target ? -1 : 1) : a.body < b.body ? -1 : 1));

describe('bodies in a file', () => {
  test('every shape, repeat and mesh comes back as it was, through editing and undoing too', async () => {
    const records = everyShape();
    const file = await bench.file(records);
    const store = await bench.open(file);
    expect(await recordsOf(store)).toEqual(records);
    const [first] = bodiesIn(records);
    const moved: Body = { ...first!, name: 'plate', adds: false, finish: 'cored', order: 1 / 3 };
    const { revision } = okOf(await store.load());
    okOf(await store.commit(revision, 'change body', updating(first!, moved)));
    expect(bodiesIn(await recordsOf(store))[0]).toEqual(moved);
    okOf(await store.step('undo', revision + 1));
    expect(await recordsOf(store)).toEqual(records);
  });

  test('what bodies hang on is kept as references, and follows every edit', async () => {
    const records = everyShape();
    const bodies = bodiesIn(records);
    const file = await bench.file(records);
    expect(await usesIn(file)).toEqual(usesOfAll(bodies));
    const store = await bench.open(file);
    const { revision } = okOf(await store.load());
    const hole = bodies.find(({ shape }) => shape.type === 'hole')!;
    const plain: Body = { ...hole, repeats: [] };
    okOf(await store.commit(revision, 'one hole', updating(hole, plain)));
    okOf(await store.commit(revision + 1, 'remove the first', removing(bodies[0]!)));
    await store.close();
    const left = bodies.slice(1).map((body) => (body === hole ? plain : body));
    expect(await usesIn(file)).toEqual(usesOfAll(left));
  });

  test.each(['station', 'dimension', 'solid'] as const)(
    'no edit leaves a body hanging on a %s that is gone',
    async (kind) => {
      const records = everyShape();
      const store = await bench.open(await bench.file(records));
      const { revision } = okOf(await store.load());
      const needed = new Set<string>(bodiesIn(records).flatMap((body) => [...idsIn(body)]));
      const target = records.findLast((record) => record.kind === kind && needed.has(record.id))!;
      const measuring = records.filter(
        (record) => record.kind === 'dimension' && record.measure.type === 'between' && record.measure.to === target.id,
      );
      await expect(store.commit(revision, 'remove', removing(target, ...measuring))).rejects.toThrow(BugError);
      expect(await recordsOf(store)).toEqual(records);
    },
  );

  test('a file whose references were cut is refused as damaged', async () => {
    const file = await bench.file(everyShape());
    const { db } = await connectStore(file, 'write');
    await sql`pragma foreign_keys = off`.execute(db);
    await sql`delete from solid`.execute(db);
    await db.destroy();
    expect(refusalOf(await openStore(file))).toMatchObject({
      code: 'damaged',
      detail: expect.stringContaining('solid'),
    });
  });

  test.each(['new', 'brought up from version 1'])(
    'a file (%s) whose list of tables is destroyed is recovered, bodies and all',
    async (origin) => {
      const file = path.join(await bench.folder(), 'frame.wayw');
      const records = everyShape();
      if (origin === 'new') await copyFile(await bench.file(records), file);
      else {
        await copyFile(new URL('../formats/version-1.wayw', import.meta.url), file);
        const store = await bench.open(file);
        const { revision } = okOf(await store.load());
        const added = records.filter(({ kind }) => kind !== 'settings');
        okOf(await store.commit(revision, 'draw bodies', adding(...added)));
        await store.close();
      }
      const before = await bench.open(file);
      const expected = byId(await recordsOf(before));
      await before.close();
      const handle = await open(file, 'r+');
      await handle.write(new Uint8Array(3996), 0, 3996, 100);
      await handle.close();
      const target = path.join(await bench.folder(), 'recovered.wayw');
      okOf(await recover(file, target));
      expect(byId(await recordsOf(await bench.open(target)))).toEqual(expected);
    },
  );
});
