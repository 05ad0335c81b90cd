import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './part-clash.ts';

testRule(rule, {
  passes: [
    { name: 'no parts', facts: { parts: [] } },
    { name: 'parts without numbers', facts: { parts: [part('column'), part('ram')] } },
  ],
  finds: [
    {
      name: 'names and numbers',
      facts: { parts: [part('column', { number: '7' }), part('b', { name: 'Column' }), part('ram', { number: '7' })] },
      findings: [
        { message: 'names', at: [partId('column'), partId('b')], data: { count: 2, name: 'column' } },
        { message: 'numbers', at: [partId('column'), partId('ram')], data: { parts: 'column and ram', number: '7' } },
      ],
    },
  ],
});
