import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseBuildJson, writeBuildJson } from '../../src/shared/build/build-json.ts';
import { commands, runCommand } from '../../src/shared/build/commands/registry.ts';
import { apply, invert, isEmpty } from '../../src/shared/build/diff.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { refusalWords } from '../../src/shared/build/refusals.ts';
import { validateBuild } from '../../src/shared/build/validate-build.ts';
import { bodyOrderOf } from '../support/random-bodies.ts';
import { countingContext, type Dice, dice, emptyBuild, orderOf } from '../support/random-edits.ts';
import { foundryOrderOf } from '../support/random-foundry.ts';
import { planOrderOf } from '../support/random-plans.ts';

/** First something is drawn; then most throws are of the foundry, and the others go on drawing, planning and taking away. */
const orderFrom = (build: Build, thrown: Dice, turn: number) => {
  if (turn < 15 || turn % 9 === 3) return orderOf(build, thrown);
  if (turn % 9 === 7 || turn % 9 === 5) return bodyOrderOf(build, thrown);
  if (turn % 9 === 8) return planOrderOf(build, thrown);
  return foundryOrderOf(build, thrown);
};

const foundryCommands = Object.keys(commands).filter((id) =>
  /^(alloy|casting|journal|pattern|pour|weighing)-/.test(id),
);

test('every edit of the foundry can be taken back, says what it did, and makes a whole build; refusals are whole sentences', () => {
  const carriedOut = new Map<string, number>();
  const refused = new Map<string, number>();
  fc.assert(
    fc.property(fc.array(dice, { minLength: 60, maxLength: 110 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const [turn, thrown] of throws.entries()) {
        const order = orderFrom(build, thrown, turn);
        if (!order) continue;
        const step = runCommand(build, order.id, order.params as never, context);
        if (!step.ok) {
          refused.set(step.error.code, (refused.get(step.error.code) ?? 0) + 1);
          const { sentence, remedy } = refusalWords(step.error);
          expect(`${sentence} ${remedy}`).not.toMatch(/[{}]|undefined|\.\./);
          continue;
        }
        const next = apply(build, step.value.diff);
        expect(apply(next, invert(step.value.diff))).toEqual(build);
        expect(step.value.label.length).toBeGreaterThan(3);
        expect(step.value.label).not.toMatch(/undefined|\[object/);
        carriedOut.set(order.id, (carriedOut.get(order.id) ?? 0) + 1);
        build = next;
      }
      const records = [...build.values()];
      expect(validateBuild(records)).toMatchObject({ ok: true });
      const text = writeBuildJson({ records, issues: [] });
      const read = parseBuildJson(text);
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      expect(new Map(buildOf(read.value.records))).toEqual(build);
      expect(writeBuildJson(read.value)).toBe(text);
      const again = runCommand(build, 'build-replace', { records: read.value.records }, context);
      expect(again.ok && isEmpty(again.value.diff)).toBe(true);
      // No member of a record is ever undefined: files would not keep it.
      expect(JSON.parse(JSON.stringify(records))).toStrictEqual(records.map((record) => ({ ...record })));
    }),
    { numRuns: 40 },
  );
  expect(foundryCommands).toHaveLength(16);
  for (const id of foundryCommands) expect(carriedOut.get(id) ?? 0, id).toBeGreaterThan(3);
  for (const code of [
    'alloy-figures-cross',
    'alloy-name-taken',
    'casting-does-not-hold',
    'pour-does-not-hold',
    'weighing-there',
    'weighing-empty',
    'field-refused',
  ])
    expect(refused.get(code) ?? 0, code).toBeGreaterThan(0);
}, 60_000);
