import { open } from 'node:fs/promises';
import path from 'node:path';
import fc from 'fast-check';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { connectStore } from '../../src/main/store/file-format.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { recover } from '../../src/main/store/recover.ts';
import { BugError } from '../../src/shared/base/assert.ts';
import type { Casting } from '../../src/shared/build/casting.ts';
import { apply, isEmpty } from '../../src/shared/build/diff.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import { isPlan, type Plan, usesOfPlan } from '../../src/shared/build/plan-uses.ts';
import type { Pour } from '../../src/shared/build/pour.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { validateBuild } from '../../src/shared/build/validate-build.ts';
import { countingContext, dice, orderOf, tryOrder } from '../support/random-edits.ts';
import { foundryOrderOf } from '../support/random-foundry.ts';
import { firstPour, fullCasting, sampleFoundry, secondPour } from '../support/sample-foundry.ts';
import { byId, okOf, recordsOf, refusalOf, removing, updating, workbench } from './sample-build.ts';

const bench = workbench();
const records = sampleFoundry();
const plans = records.filter(isPlan).filter(({ kind }) => kind === 'casting' || kind === 'pattern' || kind === 'pour');
const recordNamed = <R extends BuildRecord>(id: string): R => records.find((record) => record.id === id) as R;

const inOrder = (uses: readonly (readonly [string, string])[]) =>
  [...new Set(uses.map((use) => use.join(' > ')))].sort((a, b) => (a < b ? -1 : 1));

/** What the tables of references hold; machines and the earlier pour stand in columns of the record's own row. */
async function usesIn(file: string): Promise<readonly string[]> {
  const { db } = await connectStore(file, 'read');
  const { rows } = await sql<{ user: string; target: string }>`
    select casting as user, coalesce(station, dimension, body) as target from casting_use
    union all select pour, coalesce(part, pattern, body) from pour_use`.execute(db);
  await db.destroy();
  return inOrder(rows.map(({ user, target }) => [user, target] as const));
}

const usesOfAll = (list: readonly Plan[]) =>
  inOrder(
    list.flatMap((plan) =>
      usesOfPlan(plan)
        .uses.filter(({ field }) => field.includes('/'))
        .map(({ id }) => [plan.id, id] as const),
    ),
  );

test('the sample holds together', () => {
  expect(validateBuild(records)).toMatchObject({ ok: true });
});

describe('alloys, castings, patterns and pours in a file', () => {
  test('every one comes back as it was, to the last bit, through editing and undoing too', async () => {
    const file = await bench.file(records);
    const store = await bench.open(file);
    expect(byId(await recordsOf(store))).toEqual(byId(records));
    const { revision } = okOf(await store.load());
    const { up: _, parting: __, bow: ___, flask: ____, sectionAxis: _____, ...bare } = fullCasting;
    const { journal: ______, after: _______, crucible: ________, ...plain } = firstPour;
    okOf(await store.commit(revision, 'take out', updating(fullCasting, bare)));
    okOf(await store.commit(revision + 1, 'take out', updating(firstPour, plain)));
    const now = await recordsOf(store);
    expect(now.find(({ id }) => id === fullCasting.id)).toStrictEqual(bare);
    expect(now.find(({ id }) => id === firstPour.id)).toStrictEqual(plain);
    okOf(await store.step('undo', revision + 2));
    okOf(await store.step('undo', revision + 3));
    expect(byId(await recordsOf(store))).toEqual(byId(records));
    await store.close();
    expect(byId(await recordsOf(await bench.open(file)))).toEqual(byId(records));
  });

  test('what they name is kept as references, free texts are not, and they follow every edit', async () => {
    const file = await bench.file(records);
    expect(usesOfAll(plans).length).toBeGreaterThan(10);
    expect(await usesIn(file)).toEqual(usesOfAll(plans));
    const store = await bench.open(file);
    const { revision } = okOf(await store.load());
    const lean: Casting = { ...fullCasting, lugs: [], prints: [], stock: fullCasting.stock.slice(1) };
    okOf(await store.commit(revision, 'less', updating(fullCasting, lean)));
    okOf(await store.commit(revision + 1, 'remove', removing(secondPour)));
    await store.close();
    const left = plans.filter((plan) => plan !== secondPour).map((plan) => (plan === fullCasting ? lean : plan));
    expect(await usesIn(file)).toEqual(usesOfAll(left));
  });

  test.each([
    'machine:bow',
    'machine:crucible',
    'station:arm-foot',
    'station:arm-mid',
    'dimension:arm-bore',
    'body:arm-boss',
    'part:cap',
    'pattern:arm1',
    'pour:one',
  ])('no edit leaves one of them pointing at %s when that is gone', async (id) => {
    const store = await bench.open(await bench.file(records));
    const { revision } = okOf(await store.load());
    await expect(store.commit(revision, 'remove', removing(recordNamed(id)))).rejects.toThrow(BugError);
    expect(byId(await recordsOf(store))).toEqual(byId(records));
  });

  test('pours and the patterns that they use go and come in one edit', async () => {
    const store = await bench.open(await bench.file(records));
    const { revision } = okOf(await store.load());
    okOf(await store.commit(revision, 'remove the foundry', removing(...plans)));
    okOf(await store.step('undo', revision + 1));
    expect(byId(await recordsOf(store))).toEqual(byId(records));
  });

  test('a file whose references were cut is refused as damaged', async () => {
    const file = await bench.file(records);
    const { connection, db } = await connectStore(file, 'write');
    await connection.script(`pragma foreign_keys = off; delete from pattern where id = 'pattern:arm1';`);
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
    return { lost: lost.map(({ what }) => what), records: await recordsOf(await bench.open(mended)) };
  };

  test('keeps a pour without its lost pattern, crucible and earlier attempt', async () => {
    const { lost, records: left } = await salvaged(
      `delete from pattern where id = 'pattern:arm2'; delete from machine where id = 'machine:crucible';
       delete from pour where id = 'pour:one';`,
    );
    const { crucible: _, after: __, ...second } = secondPour;
    const castings = second.castings.map(({ pattern: ___, ...casting }) => casting);
    expect(left.find(({ id }) => id === second.id)).toEqual({ ...second, castings });
    expect(lost).toContain(
      'The pour “second attempt” no longer names pattern:arm2, machine:crucible, pour:one, because that is lost.',
    );
    expect(validateBuild(left)).toMatchObject({ ok: true });
  });

  test('keeps a casting without its lost print, and leaves it out where its parting is lost', async () => {
    const first = await salvaged(`delete from body where id = 'body:arm-boss';`);
    const casting = first.records.find(({ id }) => id === fullCasting.id);
    expect(casting).toEqual({ ...fullCasting, prints: [] });
    expect((first.records.find(({ id }) => id === firstPour.id) as Pour).risers[0]).not.toHaveProperty('on');
    const second = await salvaged(`delete from station where id = 'station:arm-foot';`);
    expect(second.records.some(({ id }) => id === fullCasting.id)).toBe(false);
    expect(second.lost).toContain('The casting was left out because station:arm-foot, which it points at, is lost.');
    for (const { records: left } of [first, second]) expect(validateBuild(left)).toMatchObject({ ok: true });
  });

  test('takes a lost part out of the pours, and its patterns with it', async () => {
    const { records: left } = await salvaged(`delete from part where id = 'part:arm';`);
    expect(left.some((record) => record.kind === 'pattern')).toBe(false);
    expect((left.find(({ id }) => id === firstPour.id) as Pour).castings).toEqual([{ part: 'part:cap', count: 1 }]);
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
        const order = turn % 6 === 5 ? orderOf(build, thrown) : foundryOrderOf(build, thrown);
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
