import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './value-unreadable.ts';

const text = (code: string, data: Record<string, string> = {}) => ({
  resolved: { problem: { why: 'text' as const, problem: { code, start: 0, end: 1, data } } },
});

testRule(rule, {
  passes: [
    { name: 'a value', facts: { part: part('column'), dimensions: [fact('bore', 25)] } },
    { name: 'an empty one', facts: { part: part('column'), dimensions: [fact('bore', undefined)] } },
    {
      name: 'an unknown name, which has a rule of its own',
      facts: { part: part('column'), dimensions: [fact('bore', undefined, text('name-unknown', { name: 'x' }))] },
    },
  ],
  finds: [
    {
      name: 'a division by zero',
      facts: {
        part: part('column'),
        dimensions: [fact('bore', undefined, { text: '1 mm/0', ...text('division-by-zero') })],
      },
      findings: [
        {
          message: 'text',
          at: [dimensionId('bore')],
          data: {
            name: 'bore',
            part: 'column',
            text: '1 mm/0',
            what: 'This divides by nought.',
            remedy: 'Check the value below the division sign.',
          },
        },
      ],
    },
    {
      name: 'a problem of a code without words',
      facts: { part: part('column'), dimensions: [fact('bore', undefined, { text: '?', ...text('unheard-of') })] },
      findings: [
        {
          message: 'text',
          at: [dimensionId('bore')],
          data: {
            name: 'bore',
            part: 'column',
            text: '?',
            what: 'This cannot be worked out.',
            remedy: 'Write a value that can be worked out.',
          },
        },
      ],
    },
  ],
});
