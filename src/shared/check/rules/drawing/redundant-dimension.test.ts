import { axis, dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Loop } from '../../../drawing/drawing.ts';
import rule from './redundant-dimension.ts';

const ids = [dimensionId('lower'), dimensionId('upper'), dimensionId('whole')] as const;
const loop = (verdict: Loop['verdict']): Loop => ({
  edges: ids.map((dimension) => ({ dimension, sign: 1 })),
  closingError: 0,
  worstMinus: -1,
  worstPlus: 1,
  rss: 0.5,
  verdict,
});
const dimensions = [fact('lower', 50), fact('upper', 20), fact('whole', 70)];

testRule(rule, {
  passes: [
    { name: 'no loops', facts: { part: part('column'), dimensions, axes: [axis()] } },
    {
      name: 'a contradiction',
      facts: { part: part('column'), dimensions, axes: [axis({ loops: [loop('contradiction')] })] },
    },
    {
      name: 'a reference dimension in the loop',
      facts: {
        part: part('column'),
        dimensions: [...dimensions.slice(0, 2), fact('whole', 70, { source: 'derived' })],
        axes: [axis({ loops: [loop('redundant')] })],
      },
    },
  ],
  finds: [
    {
      name: 'a loop that closes',
      facts: { part: part('column'), dimensions, axes: [axis({ loops: [loop('redundant')] })] },
      findings: [
        {
          message: 'closed',
          at: ids,
          data: { chain: 'lower, upper and whole', part: 'column', axis: 'Z', figures: '50; 20; 70' },
        },
      ],
    },
    {
      name: 'a loop with limits',
      facts: {
        part: part('column'),
        dimensions: [
          ...dimensions.slice(0, 2),
          fact('whole', 70, {
            resolved: { limits: { lower: 69.9, upper: 70.1, origin: 'written', row: 'as written' } },
          }),
        ],
        axes: [axis({ loops: [loop('redundant')] })],
      },
      findings: [
        {
          message: 'closed',
          at: ids,
          data: { chain: 'lower, upper and whole', part: 'column', axis: 'Z', figures: '50; 20; 70 (69.9 to 70.1)' },
        },
      ],
    },
  ],
});
