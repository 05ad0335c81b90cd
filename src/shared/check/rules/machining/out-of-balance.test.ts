import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { setupFactOf, setupId } from '../../../../../tests/support/setup-facts.ts';
import rule from './out-of-balance.ts';

const balance = {
  massKg: 4,
  eccentricityMm: 12.5,
  directionDeg: 0,
  imbalanceKgMm: 50,
  counterweightKg: 0.5,
  counterweightRadiusMm: 100,
  highestRpm: 150,
};
const bore = operationId('bore');
const route = (rpm: string) =>
  routeRuleFacts({
    ...routeCasting,
    operations: [
      operation('bore', 'bore', {
        setup: setupId('first'),
        chosen: { speed: '', rpm, feed: '', depth: '', minutes: '' },
      }),
    ],
  });
const facts = (rpm: string, slowestRpm: number, highestRpm: number) => {
  const { part, operations } = route(rpm);
  return { part, operations, setups: [setupFactOf({ balance: { ...balance, highestRpm } }, { slowestRpm })] };
};
const said = { part: 'column', setup: 'first setting', most: 150, weight: '0.50 kg at 100 mm', offMm: 12.5 };

testRule(rule, {
  passes: [
    { name: 'slow enough', facts: facts('120', 60, 150) },
    { name: 'in balance', facts: facts('900', 60, Number.POSITIVE_INFINITY) },
  ],
  finds: [
    {
      name: 'an operation that turns faster',
      facts: facts('400', 60, 150),
      findings: [
        {
          message: 'fast',
          at: [setupId('first'), bore],
          data: { ...said, operation: 'bore', asked: 400, share: '25 %' },
        },
      ],
    },
    {
      name: 'a machine that turns no slower',
      facts: facts('400', 200, 150),
      findings: [{ message: 'always', at: [setupId('first')], data: { ...said, asked: 200, machine: 'small lathe' } }],
    },
  ],
});
