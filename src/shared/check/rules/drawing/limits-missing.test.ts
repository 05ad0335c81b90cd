import { dimensionId, fact, part, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './limits-missing.ts';

const limits = { lower: 24.8, upper: 25.2, origin: 'general', row: 'a row' } as const;

testRule(rule, {
  passes: [
    {
      name: 'limits from a table',
      facts: { part: part('column'), dimensions: [fact('bore', 25, { resolved: { limits } })] },
    },
    { name: 'a thread', facts: { part: part('column'), dimensions: [fact('tap', 8, { measure: size('thread') })] } },
    { name: 'an angle', facts: { part: part('column'), dimensions: [fact('tilt', 8, { measure: size('angle') })] } },
    {
      name: 'zero, none, and below zero',
      facts: { part: part('column'), dimensions: [fact('a', 0), fact('b', undefined), fact('c', -1)] },
    },
    {
      name: 'limits that cannot be read',
      facts: {
        part: part('column'),
        dimensions: [fact('a', 9, { resolved: { limitsProblem: { code: 'class-not-yet', start: 0, end: 2 } } })],
      },
    },
  ],
  finds: [
    {
      name: 'a clearance too small for the table',
      facts: { part: part('column'), dimensions: [fact('clearance', 0.04)] },
      findings: [
        {
          message: 'general',
          at: [dimensionId('clearance')],
          data: { name: 'clearance', part: 'column', valueMm: 0.04 },
        },
      ],
    },
  ],
});
