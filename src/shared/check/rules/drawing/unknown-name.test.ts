import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './unknown-name.ts';

const facts = (code: string, data: Record<string, string>) => ({
  part: part('column'),
  dimensions: [
    fact('bore', undefined, {
      text: 'ramm',
      resolved: { problem: { why: 'text', problem: { code, start: 0, end: 4, data } } },
    }),
  ],
});
const at = [dimensionId('bore')] as const;
const data = { name: 'bore', part: 'column', text: 'ramm', unknown: 'ramm' };

testRule(rule, {
  passes: [
    { name: 'a value', facts: { part: part('column'), dimensions: [fact('bore', 25)] } },
    { name: 'another problem', facts: facts('division-by-zero', {}) },
    { name: 'an empty one', facts: { part: part('column'), dimensions: [fact('bore', undefined)] } },
  ],
  finds: [
    {
      name: 'a dimension',
      facts: facts('name-unknown', { name: 'ramm' }),
      findings: [{ message: 'dimension', at, data }],
    },
    {
      name: 'a dimension with one like it',
      facts: facts('name-unknown', { name: 'ramm', nearest: 'ram' }),
      findings: [{ message: 'dimension-near', at, data: { ...data, nearest: 'ram' } }],
    },
    { name: 'a part', facts: facts('part-unknown', { name: 'ramm' }), findings: [{ message: 'part', at, data }] },
    {
      name: 'a part with one like it',
      facts: facts('part-unknown', { name: 'ramm', nearest: 'ram' }),
      findings: [{ message: 'part-near', at, data: { ...data, nearest: 'ram' } }],
    },
    {
      name: 'a name that two bear',
      facts: facts('name-ambiguous', { name: 'ramm' }),
      findings: [{ message: 'twice', at, data }],
    },
  ],
});
