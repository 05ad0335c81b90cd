import { between, dimensionId, fact, part, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './size-not-positive.ts';

testRule(rule, {
  passes: [
    {
      name: 'a size above zero',
      facts: { part: part('column'), dimensions: [fact('bore', 25, { measure: size('diameter') })] },
    },
    {
      name: 'a signed distance',
      facts: { part: part('column'), dimensions: [fact('drop', -25, { measure: between('a', 'b') })] },
    },
    {
      name: 'an angle below zero',
      facts: { part: part('column'), dimensions: [fact('tilt', -5, { measure: size('angle') })] },
    },
    {
      name: 'no value',
      facts: { part: part('column'), dimensions: [fact('bore', undefined, { measure: size('diameter') })] },
    },
  ],
  finds: [
    {
      name: 'zero, and a formula that comes out below it',
      facts: {
        part: part('column'),
        dimensions: [
          fact('holes', 0, { measure: size('count') }),
          fact('bore', -1, { measure: size('diameter'), text: 'a - b', resolved: { isFormula: true } }),
        ],
      },
      findings: [
        {
          message: 'size',
          at: [dimensionId('holes')],
          data: { name: 'holes', part: 'column', form: 'count', text: '0', value: 0 },
        },
        {
          message: 'formula',
          at: [dimensionId('bore')],
          data: { name: 'bore', part: 'column', form: 'diameter', text: 'a - b', valueMm: -1 },
        },
      ],
    },
  ],
});
