import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apply, type BuildDiff, invert } from '../../src/shared/build/diff.ts';
import type { Build, BuildRecord, RecordId } from '../../src/shared/build/records.ts';
import { adding, byId, okOf, partOf, recordsOf, removing, sampleBuild, updating, workbench } from './sample-build.ts';

/**
 * Random editing, undoing, redoing and reopening against the plainest possible model: a document in memory and two
 * stacks of diffs. The file must hold the model's document, and its journal must replay to it.
 */
type Act =
  | { readonly act: 'add'; readonly n: number }
  | { readonly act: 'rename' | 'remove'; readonly pick: number; readonly text: string }
  | { readonly act: 'undo' | 'redo' | 'reopen' };

const actArbitrary: fc.Arbitrary<Act> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ act: fc.constant('add' as const), n: fc.integer({ min: 100, max: 130 }) }) },
  {
    weight: 5,
    arbitrary: fc.record({
      act: fc.constantFrom('rename' as const, 'remove' as const),
      pick: fc.nat(40),
      text: fc.string({ unit: 'grapheme', maxLength: 12 }),
    }),
  },
  { weight: 6, arbitrary: fc.record({ act: fc.constantFrom('undo' as const, 'undo' as const, 'redo' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('reopen' as const) }) },
);

const bench = workbench();

/** The edit that the act asks for on this build, if it makes sense there. */
function diffOf(build: Build, act: Act): BuildDiff | undefined {
  const records = [...build.values()];
  switch (act.act) {
    case 'add': {
      const part = partOf(act.n);
      return build.has(part.id) ? undefined : adding(part);
    }
    case 'rename': {
      const record = records[act.pick % records.length]!;
      return 'note' in record ? updating(record, { ...record, note: act.text }) : undefined;
    }
    case 'remove': {
      const record = records[act.pick % records.length]!;
      if (record.kind === 'settings') return undefined;
      const pointsAt = (r: BuildRecord) => JSON.stringify(r).includes(`"${record.id}"`);
      // What points at a part or a station goes with it; what points at a station of the part belongs to the part.
      return removing(...records.filter(pointsAt));
    }
    default:
      return undefined;
  }
}

test('the file holds what memory holds, and its journal replays to it', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(actArbitrary, { minLength: 5, maxLength: 30 }), async (acts) => {
      const start = sampleBuild(2, 3, 4);
      const file = await bench.file(start);
      let store = await bench.open(file);
      let build: Build = new Map(start.map((r) => [r.id, r] as const));
      let revision = 0;
      const past: BuildDiff[] = [];
      let future: BuildDiff[] = [];

      for (const act of acts) {
        if (act.act === 'reopen') {
          await store.close();
          store = await bench.open(file);
        } else if (act.act === 'undo' || act.act === 'redo') {
          const diff = act.act === 'undo' ? past.pop() : future.pop();
          const result = await store.step(act.act, revision);
          if (!diff) {
            expect(result).toEqual({ ok: false, error: { code: 'nothing-to-step' } });
            continue;
          }
          const applied = act.act === 'undo' ? invert(diff) : diff;
          expect(okOf(result).diff).toEqual(applied);
          build = apply(build, applied);
          (act.act === 'undo' ? future : past).push(diff);
          revision += 1;
        } else {
          const diff = diffOf(build, act);
          if (!diff) continue;
          okOf(await store.commit(revision, act.act, diff));
          build = apply(build, diff);
          past.push(diff);
          future = [];
          revision += 1;
        }
      }

      expect(byId(await recordsOf(store))).toEqual(byId([...build.values()]));
      let replayed: Build = new Map<RecordId, BuildRecord>();
      for (const { state, diff } of await store.journal()) {
        if (state === 'first' || state === 'done') replayed = apply(replayed, diff);
      }
      expect(byId([...replayed.values()])).toEqual(byId([...build.values()]));
      expect(okOf(await store.load()).revision).toBe(revision);
      await store.close();
    }),
    { numRuns: 25 },
  );
});
