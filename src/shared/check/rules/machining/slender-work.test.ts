import { stationId } from '../../../../../tests/support/facts.ts';
import {
  operation,
  operationId,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './slender-work.ts';

const facts = (diameter: string) =>
  routeRuleFacts({
    ...routeCasting,
    setups: [setup('u', { holding: { as: 'between centres' } })],
    operations: [
      operation('turn', 'turn', {
        setup: setupId('u'),
        cut: {
          ends: [
            { station: stationId('left'), beyond: '' },
            { station: stationId('right'), beyond: '' },
          ],
          diameter: { written: diameter },
          inner: { written: '' },
        },
      }),
    ],
  });

testRule(rule, {
  passes: [{ name: 'stout', facts: facts('10') }],
  finds: [
    {
      name: 'slender',
      facts: facts('8'),
      findings: [
        {
          message: 'slender',
          at: [operationId('turn')],
          data: { operation: 'turn', part: 'column', ratio: '13', limit: 10, source: 'common practice, no source' },
        },
      ],
    },
  ],
});
