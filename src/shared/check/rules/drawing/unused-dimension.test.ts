import { placedBody } from '../../../../../tests/support/body-facts.ts';
import { between, dimensionId, fact, part, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './unused-dimension.ts';

const derived = { source: 'derived' as const, measure: size('length') };

testRule(rule, {
  passes: [
    { name: 'a drawn size', facts: { part: part('column'), bodies: [], dimensions: [fact('wall', 6)] } },
    {
      name: 'a derived size that is named',
      facts: {
        part: part('column'),
        bodies: [],
        dimensions: [fact('wall', 6, { ...derived, namedBy: [dimensionId('a')] })],
      },
    },
    {
      name: 'a derived distance',
      facts: {
        part: part('column'),
        bodies: [],
        dimensions: [fact('wall', 6, { ...derived, measure: between('a', 'b') })],
      },
    },
    {
      name: 'a derived size that a body takes',
      facts: {
        part: part('column'),
        bodies: [{ ...placedBody('bore'), dimensions: [dimensionId('wall')] }],
        dimensions: [fact('wall', 6, derived)],
      },
    },
    {
      name: 'one without a value',
      facts: { part: part('column'), bodies: [], dimensions: [fact('wall', undefined, derived)] },
    },
  ],
  finds: [
    {
      name: 'a derived size that nothing names',
      facts: { part: part('column'), bodies: [], dimensions: [fact('wall', 6, derived)] },
      findings: [{ message: 'unused', at: [dimensionId('wall')], data: { name: 'wall', part: 'column', valueMm: 6 } }],
    },
  ],
});
