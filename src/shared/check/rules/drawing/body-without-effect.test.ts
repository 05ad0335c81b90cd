import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { block } from '../../../../../tests/support/placed-bodies.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './body-without-effect.ts';

const facts = { part: part('column') };
const inner = placedBody('inner', { exact: block([5, 10], [5, 10], [2, 8]) });

testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, bodies: [placedBody('plate'), inner], solid: undefined } },
    {
      name: 'a part that lacks a body',
      facts: {
        ...facts,
        bodies: [placedBody('lug', { problem: notPlaced(['left']) }), inner],
        solid: solidFact({ idle: ['inner'] }),
      },
    },
    { name: 'no idle body', facts: { ...facts, bodies: [placedBody('plate')], solid: solidFact() } },
    {
      name: 'a hole, and twins, which are other findings',
      facts: {
        ...facts,
        bodies: [placedBody('plate'), placedBody('twin'), placedBody('hole', { adds: false, exact: inner.shape! })],
        solid: solidFact({ idle: ['plate', 'twin', 'hole'] }),
      },
    },
  ],
  finds: [
    {
      name: 'a body within another',
      facts: { ...facts, bodies: [placedBody('plate'), inner], solid: solidFact({ idle: ['inner'] }) },
      findings: [{ message: 'inside', at: [bodyId('inner')], data: { part: 'column', body: 'inner' } }],
    },
  ],
});
