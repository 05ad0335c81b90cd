import { stationId } from '../../../../../tests/support/facts.ts';
import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './operation-ring.ts';

const a = operation('a', 'mill', { makes: [stationId('foot')], from: [stationId('top')] });
const b = operation('b', 'mill', { makes: [stationId('top')], from: [stationId('foot')] });

testRule(rule, {
  passes: [
    { name: 'no route', facts: routeRuleFacts(routeCasting) },
    { name: 'an order there is', facts: routeRuleFacts({ ...routeCasting, operations: [a, { ...b, from: [] }] }) },
  ],
  finds: [
    {
      name: 'each waits for the other',
      facts: routeRuleFacts({ ...routeCasting, operations: [a, b] }),
      findings: [
        {
          message: 'ring',
          at: [operationId('a'), operationId('b')],
          data: { part: 'column', ring: 'a before b before a' },
        },
      ],
    },
  ],
});
