import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './limits-unreadable.ts';

const limitsProblem = { code: 'class-not-yet', start: 0, end: 2 };

testRule(rule, {
  passes: [
    { name: 'no limits', facts: { part: part('column'), dimensions: [fact('bore', 25)] } },
    {
      name: 'limits that can be read',
      facts: { part: part('column'), dimensions: [fact('bore', 25, { limits: '±0.1' })] },
    },
  ],
  finds: [
    {
      name: 'a class',
      facts: { part: part('column'), dimensions: [fact('bore', 25, { limits: 'H7', resolved: { limitsProblem } })] },
      findings: [
        {
          message: 'text',
          at: [dimensionId('bore')],
          data: {
            name: 'bore',
            part: 'column',
            text: 'H7',
            what: 'Tolerance classes such as H7 are not read yet.',
            remedy: 'Write the limits as numbers, such as +0.021/0.',
          },
        },
      ],
    },
  ],
});
