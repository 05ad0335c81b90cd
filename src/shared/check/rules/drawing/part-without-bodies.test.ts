import { placedBody } from '../../../../../tests/support/body-facts.ts';
import { fact, part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './part-without-bodies.ts';

const facts = { part: part('column'), dimensions: [fact('height', 200)] };

testRule(rule, {
  passes: [
    { name: 'a body', facts: { ...facts, bodies: [placedBody('boss')] } },
    { name: 'no dimension, which is another finding', facts: { ...facts, dimensions: [], bodies: [] } },
    { name: 'a bought part', facts: { ...facts, part: part('column', { make: 'bought' }), bodies: [] } },
  ],
  finds: [
    {
      name: 'dimensions alone',
      facts: { ...facts, bodies: [] },
      findings: [{ message: 'none', at: [partId('column')], data: { part: 'column' } }],
    },
  ],
});
