import { placedBody } from '../../../../../tests/support/body-facts.ts';
import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './material-unknown-density.ts';

const facts = { part: part('column', { material: ' odd metal ' }), bodies: [placedBody('boss')] };

testRule(rule, {
  passes: [
    { name: 'a known density', facts: { ...facts, material: { name: 'odd metal', densityKgM3: 2700, source: '' } } },
    { name: 'no body', facts: { ...facts, bodies: [], material: undefined } },
    {
      name: 'no material, which is another finding',
      facts: { ...facts, part: part('column', { material: '' }), material: undefined },
    },
    {
      name: 'a bought part',
      facts: { ...facts, part: part('column', { make: 'bought', material: 'odd metal' }), material: undefined },
    },
  ],
  finds: [
    {
      name: 'a name nobody knows',
      facts: { ...facts, material: undefined },
      findings: [{ message: 'unknown', at: [partId('column')], data: { part: 'column', material: 'odd metal' } }],
    },
    {
      name: 'a row without a density',
      facts: { ...facts, material: { name: 'Odd metal', source: '' } },
      findings: [{ message: 'density', at: [partId('column')], data: { part: 'column', material: 'Odd metal' } }],
    },
  ],
});
