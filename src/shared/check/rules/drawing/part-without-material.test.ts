import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './part-without-material.ts';

testRule(rule, {
  passes: [
    { name: 'a material', facts: { part: part('column') } },
    { name: 'a bought part', facts: { part: part('bearing', { make: 'bought', material: '' }) } },
  ],
  finds: [
    {
      name: 'a casting',
      facts: { part: part('column', { material: ' ' }) },
      findings: [{ message: 'cast', at: [partId('column')], data: { part: 'column' } }],
    },
    {
      name: 'a part from stock',
      facts: { part: part('ram', { make: 'stock', material: '' }) },
      findings: [{ message: 'stock', at: [partId('ram')], data: { part: 'ram' } }],
    },
  ],
});
