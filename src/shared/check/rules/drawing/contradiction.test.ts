import { axis, dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Suspect } from '../../../drawing/drawing.ts';
import rule from './contradiction.ts';

const [a, b, c] = [dimensionId('lower'), dimensionId('upper'), dimensionId('whole')];
const dimensions = [fact('lower', 50), fact('upper', 20), fact('whole', 45)];
const suspect = (over: Partial<Suspect>): Suspect => ({ dimension: c, wouldBe: 70, slip: undefined, ...over });

/** 50 + 20 - 45 = 25 left over, with ±0.3 on each. */
const facts = (suspects: readonly Suspect[], error = 25) => ({
  part: part('column'),
  dimensions,
  axes: [
    axis({
      conflicts: [
        {
          dimensions: [a, b, c],
          loop: {
            edges: [
              { dimension: a, sign: 1 },
              { dimension: b, sign: 1 },
              { dimension: c, sign: -1 },
            ],
            closingError: error,
            worstMinus: -0.9,
            worstPlus: 0.8,
            rss: 0.5,
            verdict: 'contradiction',
          },
          suspects,
        },
      ],
    }),
  ],
});
const data = {
  chain: 'lower, upper and whole',
  part: 'column',
  axis: 'Z',
  errorMm: 25,
  allowedMm: 0.8,
  suspect: 'whole',
  text: '45',
  wouldBeMm: 70,
};

testRule(rule, {
  passes: [
    { name: 'no conflicts', facts: { part: part('column'), dimensions, axes: [axis()] } },
    { name: 'no axes', facts: { part: part('column'), dimensions, axes: [] } },
  ],
  finds: [
    { name: 'one explanation', facts: facts([suspect({})]), findings: [{ message: 'one', at: [c, a, b], data }] },
    {
      name: 'a slip that is recognised',
      facts: facts([suspect({ slip: 'digits-swapped' })]),
      findings: [{ message: 'slip', at: [c, a, b], data: { ...data, slip: 'two digits had changed places' } }],
    },
    {
      name: 'several explanations; the side of the error tells which limit counts',
      facts: facts([suspect({}), suspect({ dimension: a, wouldBe: 25 })], -25),
      findings: [{ message: 'several', at: [c, a, b], data: { ...data, allowedMm: 0.9 } }],
    },
  ],
});
