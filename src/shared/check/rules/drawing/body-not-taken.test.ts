import { bodyId, placedBody } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { meshFaults } from '../../../solid/manifold/kernel.ts';
import rule from './body-not-taken.ts';

const facts = { part: part('column') };

testRule(rule, {
  passes: [{ name: 'nothing refused', facts: { ...facts, bodies: [placedBody('boss')], refused: [] } }],
  finds: [
    {
      name: 'every fault',
      facts: {
        ...facts,
        bodies: meshFaults.map((why) => placedBody(why)),
        refused: meshFaults.map((why) => ({ body: bodyId(why), why })),
      },
      findings: meshFaults.map((why) => ({ message: why, at: [bodyId(why)], data: { body: why, part: 'column' } })),
    },
  ],
});
