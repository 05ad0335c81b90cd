import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './dimension-without-value.ts';

testRule(rule, {
  passes: [
    { name: 'a part without dimensions', facts: { part: part('column'), dimensions: [] } },
    { name: 'a given zero', facts: { part: part('column'), dimensions: [fact('bore', 0)] } },
    {
      name: 'one that waits for another',
      facts: {
        part: part('column'),
        dimensions: [
          fact('bore', undefined, { resolved: { problem: { why: 'waiting', causes: [dimensionId('ram')] } } }),
        ],
      },
    },
  ],
  finds: [
    {
      name: 'an empty value',
      facts: { part: part('column'), dimensions: [fact('bore', undefined), fact('height', 100)] },
      findings: [{ message: 'empty', at: [dimensionId('bore')], data: { name: 'bore', part: 'column' } }],
    },
  ],
});
