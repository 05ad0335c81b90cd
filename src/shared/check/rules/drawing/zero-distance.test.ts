import { between, dimensionId, fact, part, size, station } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './zero-distance.ts';

const stations = [station('foot'), station('top')];
const measure = between('foot', 'top');
const written = { lower: -0.1, upper: 0.1, origin: 'written', row: 'as written' } as const;

testRule(rule, {
  passes: [
    { name: 'a distance', facts: { part: part('column'), stations, dimensions: [fact('height', 0.001, { measure })] } },
    {
      name: 'a size',
      facts: { part: part('column'), stations, dimensions: [fact('bore', 0, { measure: size('diameter') })] },
    },
    {
      name: 'in line within limits',
      facts: {
        part: part('column'),
        stations,
        dimensions: [fact('height', 0, { measure, resolved: { limits: written } })],
      },
    },
  ],
  finds: [
    {
      name: 'zero',
      facts: { part: part('column'), stations, dimensions: [fact('height', 0, { measure })] },
      findings: [
        {
          message: 'zero',
          at: [dimensionId('height')],
          data: { name: 'height', part: 'column', from: 'foot', to: 'top' },
        },
      ],
    },
  ],
});
