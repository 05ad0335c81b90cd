import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseBuildJson, writeBuildJson } from '../../src/shared/build/build-json.ts';
import { readCsv, writeCsv } from '../../src/shared/build/csv.ts';
import { apply, invert, isEmpty } from '../../src/shared/build/diff.ts';
import { planImport, usualImport } from '../../src/shared/build/import-rows.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import { validateBuild } from '../../src/shared/build/validate-build.ts';
import { countingContext, dice, emptyBuild, orderOf, tryOrder } from '../support/random-edits.ts';

test('every edit can be taken back, leaves the build before it untouched, and makes a whole build', () => {
  let carriedOut = 0;
  fc.assert(
    fc.property(fc.array(dice, { minLength: 20, maxLength: 60 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const thrown of throws) {
        const order = orderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (!step) continue;
        const before = structuredClone(build);
        const next = apply(build, step.diff);
        expect(build).toEqual(before);
        expect(apply(next, invert(step.diff))).toEqual(before);
        expect(step.label.length).toBeGreaterThan(3);
        carriedOut++;
        build = next;
      }
      expect(validateBuild([...build.values()])).toMatchObject({ ok: true });
    }),
    { numRuns: 60 },
  );
  expect(carriedOut).toBeGreaterThan(1000);
}, 60_000);

test('a build comes back from its JSON form as it was, and putting it in its own place changes nothing', () => {
  fc.assert(
    fc.property(fc.array(dice, { minLength: 5, maxLength: 40 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const thrown of throws) {
        const order = orderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (step) build = apply(build, step.diff);
      }
      const text = writeBuildJson({ records: [...build.values()], issues: [] });
      const read = parseBuildJson(text);
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      expect(new Map(buildOf(read.value.records))).toEqual(build);
      expect(writeBuildJson(read.value)).toBe(text);
      const again = tryOrder(build, { id: 'build-replace', params: { records: read.value.records } }, context);
      expect(again && isEmpty(again.diff)).toBe(true);
    }),
    { numRuns: 40 },
  );
}, 60_000);

test('a table of dimensions that the build wrote itself changes nothing in it', () => {
  fc.assert(
    fc.property(fc.array(dice, { minLength: 5, maxLength: 50 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const thrown of throws) {
        const order = orderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (step) build = apply(build, step.diff);
      }
      const table = readCsv(writeCsv(build));
      if (!table.ok) throw new Error(table.error.sentence);
      const plan = planImport(build, table.value.rows, usualImport, context);
      expect(isEmpty(plan.diff)).toBe(true);
      // Only names that two share can be refused: nothing tells which of them a line means.
      for (const row of plan.rows) if (row.outcome !== 'unchanged') expect(row.reason).toMatch(/ are called /);
    }),
    { numRuns: 60 },
  );
}, 60_000);
