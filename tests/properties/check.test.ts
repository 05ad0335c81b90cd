import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apply, invert } from '../../src/shared/build/diff.ts';
import { partsOf } from '../../src/shared/build/look-up.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { findingWords } from '../../src/shared/check/words.ts';
import type { Works } from '../../src/shared/check/works.ts';
import { countingContext, dice, emptyBuild, orderOf, tryOrder } from '../support/random-edits.ts';

/** Everything that the works say of their build. */
const sayings = (works: Works) => ({
  findings: works.findings(),
  parts: partsOf(works.build).map(({ id }) => ({ id, findings: works.findingsOf(id), gates: works.gatesOf(id) })),
});

test('after any edits, undone ones too, the works say what fresh ones would', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(fc.array(fc.tuple(dice, fc.boolean()), { minLength: 20, maxLength: 60 }), (throws) => {
      let build = emptyBuild();
      const works = createWorks(build);
      const context = countingContext();
      for (const [thrown, takenBack] of throws) {
        const order = orderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (!step) continue;
        const before = sayings(works);
        works.update(step.diff);
        const now = sayings(works);
        expect(now).toEqual(sayings(createWorks(apply(build, step.diff))));
        for (const finding of now.findings) seen.add(`${finding.rule}/${finding.message}`);
        expect(new Set(now.findings.map(({ key }) => key)).size).toBe(now.findings.length);
        if (takenBack && thrown.a % 4 === 0) {
          works.update(invert(step.diff));
          expect(sayings(works)).toEqual(before);
        } else build = apply(build, step.diff);
      }
    }),
    { numRuns: 60 },
  );
  expect([...seen].sort()).toEqual(
    expect.arrayContaining(['dimension-without-value/empty', 'station-not-placed/apart']),
  );
  expect(seen.size).toBeGreaterThan(15);
}, 60_000);

test('what an edit leaves alone keeps its identity, and every change is told', () => {
  fc.assert(
    fc.property(fc.array(dice, { minLength: 20, maxLength: 50 }), (throws) => {
      const works = createWorks(emptyBuild());
      const context = countingContext();
      for (const thrown of throws) {
        const order = orderOf(works.build, thrown);
        const step = order && tryOrder(works.build, order, context);
        if (!step) continue;
        const before = new Map(partsOf(works.build).map(({ id }) => [id, [works.findingsOf(id), works.gatesOf(id)]]));
        const list = works.findings();
        const change = works.update(step.diff);
        expect(works.findings() !== list).toBe(change.findingsChanged);
        for (const { id } of partsOf(works.build)) {
          if (change.parts.includes(id)) continue;
          expect(works.findingsOf(id)).toBe(before.get(id)?.[0]);
          expect(works.gatesOf(id)).toBe(before.get(id)?.[1]);
        }
      }
    }),
    { numRuns: 40 },
  );
}, 60_000);

test('every finding has words with nothing left open', () => {
  fc.assert(
    fc.property(fc.array(dice, { minLength: 20, maxLength: 60 }), fc.constantFrom('mm', 'in'), (throws, unit) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const thrown of throws) {
        const order = orderOf(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (step) build = apply(build, step.diff);
      }
      for (const finding of createWorks(build).findings()) {
        const { sentence, remedy } = findingWords(finding, unit);
        expect(`${sentence} ${remedy}`).not.toMatch(/[{}]|NaN|undefined|null/);
        expect(sentence.length * remedy.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 40 },
  );
}, 60_000);
