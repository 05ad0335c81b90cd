import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apply, invert } from '../../src/shared/build/diff.ts';
import { buildOf, partsOf } from '../../src/shared/build/look-up.ts';
import { createWorks } from '../../src/shared/check/create-works.ts';
import { findingWords } from '../../src/shared/check/words.ts';
import type { Works } from '../../src/shared/check/works.ts';
import { holdingsOf, proposeOrder } from '../../src/shared/machining/route/propose-order.ts';
import { routeTimes } from '../../src/shared/machining/route/route-times.ts';
import { countingContext, dice, orderOf, tryOrder } from '../support/random-edits.ts';
import { planOrderOf } from '../support/random-plans.ts';
import { samplePlans } from '../support/sample-plans.ts';

/** Everything that the works say of how their parts are machined. */
const machiningOf = (works: Works) =>
  partsOf(works.build).map(({ id }) => {
    const facts = works.factsOf(id)!;
    return { id, operations: facts.operations, route: facts.route };
  });

const throws = fc.array(fc.tuple(dice, fc.boolean(), fc.boolean()), { minLength: 15, maxLength: 40 });

test('after any edits, undone ones too, operations and routes are what fresh works make of them', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(throws, (list) => {
      const works = createWorks(buildOf(samplePlans()));
      const context = countingContext();
      for (const [thrown, ofPlans, takenBack] of list) {
        const order = (ofPlans ? planOrderOf : orderOf)(works.build, thrown);
        const step = order && tryOrder(works.build, order, context);
        if (!step) continue;
        const before = machiningOf(works);
        works.update(step.diff);
        expect(machiningOf(works)).toEqual(machiningOf(createWorks(works.build)));
        for (const finding of works.findings()) {
          if (finding.department !== 'machining') continue;
          seen.add(finding.rule);
          const words = findingWords(finding, 'mm');
          for (const text of Object.values(words)) expect(text).not.toMatch(/[{}]|undefined|NaN/);
        }
        if (takenBack) {
          works.update(invert(step.diff));
          expect(machiningOf(works)).toEqual(before);
        }
      }
    }),
    { numRuns: 40 },
  );
  expect([...seen].sort()).toEqual(
    expect.arrayContaining(['metal-not-known', 'operation-unreadable', 'operation-order']),
  );
}, 120_000);

test('an edit of one part leaves the operations of others the very ones that they were', () => {
  const works = createWorks(buildOf(samplePlans()));
  const before = new Map(partsOf(works.build).map(({ id }) => [id, works.factsOf(id)!.operations]));
  const arm = partsOf(works.build).find(({ name }) => name === 'arm')!;
  works.update({ added: [], updated: [[arm, { ...arm, note: 'painted grey' }]], removed: [] });
  for (const { id } of partsOf(works.build)) expect(works.factsOf(id)!.operations).toBe(before.get(id));
});

test('any route gets an order that has all it needs, or a ring, and times that add up', () => {
  fc.assert(
    fc.property(throws, (list) => {
      let build = buildOf(samplePlans());
      const context = countingContext();
      for (const [thrown, ofPlans] of list) {
        const order = (ofPlans ? planOrderOf : orderOf)(build, thrown);
        const step = order && tryOrder(build, order, context);
        if (step) build = apply(build, step.diff);
      }
      const works = createWorks(build);
      for (const part of partsOf(build)) {
        const { operations, route } = works.factsOf(part.id)!;
        const records = operations.map(({ record }) => record);
        const proposal = proposeOrder(records, route.constraints);
        expect(proposal.is === 'ring').toBe(route.faults.some(({ is }) => is === 'ring'));
        const times = routeTimes(operations, part.quantity);
        expect(times.perPart).toBeCloseTo(times.setupMinutes + times.minutes, 9);
        expect(times.holdings.filter(({ setup }) => setup).length).toBe(
          holdingsOf(operations.map(({ record, setup }) => ({ id: record.id, setup: setup?.id }))),
        );
        if (proposal.is === 'ring') continue;
        const place = new Map(proposal.order.map((id, i) => [id, i]));
        for (const constraint of route.constraints) {
          if (proposal.dropped.includes(constraint)) continue;
          expect(place.get(constraint.first)!).toBeLessThan(place.get(constraint.next)!);
        }
      }
    }),
    { numRuns: 40 },
  );
}, 60_000);
