import { open } from 'node:fs/promises';
import path from 'node:path';
import fc from 'fast-check';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { connectStore } from '../../src/main/store/file-format.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { recover } from '../../src/main/store/recover.ts';
import { BugError } from '../../src/shared/base/assert.ts';
import { apply, isEmpty } from '../../src/shared/build/diff.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import type { Operation } from '../../src/shared/build/operation.ts';
import { type Plan, usesOfPlan } from '../../src/shared/build/plan-uses.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import type { Setup } from '../../src/shared/build/setup.ts';
import { validateBuild } from '../../src/shared/build/validate-build.ts';
import { countingContext, dice, orderOf, tryOrder } from '../support/random-edits.ts';
import { planOrderOf } from '../support/random-plans.ts';
import { samplePlans } from '../support/sample-plans.ts';
import { byId, okOf, recordsOf, refusalOf, removing, updating, workbench } from './sample-build.ts';

const bench = workbench();
const records = samplePlans();
const plans = records.filter((record): record is Plan => record.kind === 'setup' || record.kind === 'operation');
const recordNamed = <R extends BuildRecord>(id: string): R => records.find((record) => record.id === id) as R;

const inOrder = (uses: readonly (readonly [string, string])[]) =>
  [...new Set(uses.map((use) => use.join(' > ')))].sort((a, b) => (a < b ? -1 : 1));

/** What the tables of references hold; part, machine and set-up stand in columns of the record's own row. */
async function usesIn(file: string): Promise<readonly string[]> {
  const { db } = await connectStore(file, 'read');
  const { rows } = await sql<{ user: string; target: string }>`
    select setup as user, coalesce(part, station, dimension, operation) as target from setup_use
    union all select operation, coalesce(station, dimension, body, earlier) from operation_use`.execute(db);
  await db.destroy();
  return inOrder(rows.map(({ user, target }) => [user, target] as const));
}

const usesOfAll = (list: readonly Plan[]) =>
  inOrder(
    list.flatMap((plan) =>
      usesOfPlan(plan)
        .uses.filter(({ field }) => !['part', 'machine', 'setup'].includes(field))
        .map(({ id }) => [plan.id, id] as const),
    ),
  );

test('the sample holds together', () => {
  expect(validateBuild(records)).toMatchObject({ ok: true });
});

describe('machines, set-ups and operations in a file', () => {
  test('every one comes back as it was, to the last bit, through editing and undoing too', async () => {
    const file = await bench.file(records);
    const store = await bench.open(file);
    expect(byId(await recordsOf(store))).toEqual(byId(records));
    const { revision } = okOf(await store.load());
    const bored = recordNamed<Operation>('operation:bore');
    const { cut: _, setup: __, ...bare } = bored;
    okOf(await store.commit(revision, 'take out', updating(bored, bare)));
    expect((await recordsOf(store)).find(({ id }) => id === bored.id)).toStrictEqual(bare);
    okOf(await store.step('undo', revision + 1));
    expect(byId(await recordsOf(store))).toEqual(byId(records));
    await store.close();
    expect(byId(await recordsOf(await bench.open(file)))).toEqual(byId(records));
  });

  test('what they name is kept as references, free texts are not, and they follow every edit', async () => {
    const file = await bench.file(records);
    expect(await usesIn(file)).toEqual(usesOfAll(plans));
    const store = await bench.open(file);
    const { revision } = okOf(await store.load());
    const full = recordNamed<Setup>('setup:full');
    const plain: Setup = { ...full, fixtures: [], state: { is: 'as cast' }, holding: { as: 'between centres' } };
    const last = recordNamed<Setup>('setup:arm6');
    okOf(await store.commit(revision, 'less', updating(full, plain)));
    okOf(await store.commit(revision + 1, 'remove', removing(last)));
    await store.close();
    expect(await usesIn(file)).toEqual(usesOfAll(plans.filter((p) => p !== last).map((p) => (p === full ? plain : p))));
  });

  test.each([
    'machine:lathe00001',
    'station:arm-foot',
    'station:cap-mid',
    'dimension:arm-wall',
    'dimension:arm-bore',
    'body:arm-boss',
    'setup:arm1',
    'operation:face',
    'operation:cap',
  ])('no edit leaves one of them pointing at %s when that is gone', async (id) => {
    const store = await bench.open(await bench.file(records));
    const { revision } = okOf(await store.load());
    await expect(store.commit(revision, 'remove', removing(recordNamed(id)))).rejects.toThrow(BugError);
    expect(byId(await recordsOf(store))).toEqual(byId(records));
  });

  test('set-up and operation that point at each other go and come in one edit', async () => {
    const store = await bench.open(await bench.file(records));
    const { revision } = okOf(await store.load());
    okOf(await store.commit(revision, 'remove the plan', removing(...plans)));
    okOf(await store.step('undo', revision + 1));
    expect(byId(await recordsOf(store))).toEqual(byId(records));
  });

  test('a file whose references were cut is refused as damaged', async () => {
    const file = await bench.file(records);
    const { connection, db } = await connectStore(file, 'write');
    await connection.script(`pragma foreign_keys = off; delete from setup where id = 'setup:full';`);
    await db.destroy();
    expect(refusalOf(await openStore(file))).toMatchObject({
      code: 'damaged',
      detail: expect.stringContaining('point'),
    });
  });
});

describe('recovery', () => {
  test('finds them all in a file whose list of tables is destroyed', async () => {
    const file = await bench.file(records);
    const handle = await open(file, 'r+');
    await handle.write(new Uint8Array(3996), 0, 3996, 100);
    await handle.close();
    const target = path.join(await bench.folder(), 'recovered.wayw');
    expect(okOf(await recover(file, target)).lost).toEqual([]);
    expect(byId(await recordsOf(await bench.open(target)))).toEqual(byId(records));
  });

  const salvaged = async (harm: string) => {
    const file = await bench.file(records);
    const { connection, db } = await connectStore(file, 'write');
    // The journal knows every record: without it the tables alone must do.
    await connection.script(`pragma foreign_keys = off; delete from journal; ${harm}`);
    await db.destroy();
    const mended = `${file}.mended.wayw`;
    const { lost } = okOf(await recover(file, mended));
    return { lost, records: await recordsOf(await bench.open(mended)) };
  };

  test('keeps a set-up without its lost machine, and operations without their lost set-up', async () => {
    const { lost, records: left } = await salvaged(
      `delete from machine where id = 'machine:lathe00001'; delete from setup where id = 'setup:arm1';`,
    );
    const { machine: _, ...full } = recordNamed<Setup>('setup:full');
    const { setup: __, ...face } = recordNamed<Operation>('operation:face');
    expect(left.find(({ id }) => id === full.id)).toEqual(full);
    expect(left.find(({ id }) => id === face.id)).toEqual(face);
    expect(lost.map(({ what }) => what)).toContain(
      'The set-up “setup:full” no longer names machine:lathe00001, because that is lost.',
    );
  });

  test('leaves out a set-up whose state is after a lost operation, and what then hangs on nothing follows', async () => {
    const { lost, records: left } = await salvaged(`delete from operation where id = 'operation:face';`);
    expect(left.some(({ id }) => (id as string) === 'setup:full')).toBe(false);
    const bored = left.find(({ id }) => (id as string) === 'operation:bore') as Operation;
    expect(bored).toMatchObject({ after: [] });
    expect(bored.setup).toBeUndefined();
    expect(lost.map(({ what }) => what)).toContain(
      'The set-up “setup:full” was left out because operation:face, which it points at, is lost.',
    );
    expect(validateBuild(left)).toMatchObject({ ok: true });
  });
});

test('whatever is edited, the file holds what memory holds, there and back', async () => {
  let committed = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(dice, { minLength: 10, maxLength: 25 }), async (throws) => {
      let build = buildOf(records);
      const store = await bench.open(await bench.file(records));
      let { revision } = okOf(await store.load());
      const context = countingContext();
      let steps = 0;
      for (const [turn, thrown] of throws.entries()) {
        const order = turn % 6 === 5 ? orderOf(build, thrown) : planOrderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (!step || isEmpty(step.diff)) continue;
        build = apply(build, step.diff);
        ({ revision } = okOf(await store.commit(revision, step.label, step.diff)));
        steps++;
        committed++;
      }
      expect(byId(await recordsOf(store))).toEqual(byId([...build.values()]));
      for (; steps > 0; steps--) ({ revision } = okOf(await store.step('undo', revision)));
      expect(byId(await recordsOf(store))).toEqual(byId(records));
      await store.close();
    }),
    { numRuns: 10 },
  );
  expect(committed).toBeGreaterThan(80);
}, 60_000);
