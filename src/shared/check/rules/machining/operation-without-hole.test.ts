import {
  operation,
  operationId,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './operation-without-hole.ts';

const tap = operation('tap', 'tap', { makes: [routeBodyId('threaded')] });
const drill = operation('drill', 'drill', { makes: [routeBodyId('threaded')] });
const [box, , threaded] = routeCasting.bodies;

testRule(rule, {
  passes: [
    { name: 'drilled', facts: routeRuleFacts({ ...routeCasting, operations: [drill, tap] }) },
    {
      name: 'cored',
      facts: routeRuleFacts({ ...routeCasting, bodies: [box, { ...threaded, finish: 'cored' }], operations: [tap] }),
    },
  ],
  finds: [
    {
      name: 'nothing to tap in',
      facts: routeRuleFacts({ ...routeCasting, bodies: [box, threaded], operations: [tap] }),
      findings: [
        {
          message: 'none',
          at: [operationId('tap'), routeBodyId('threaded')],
          data: { part: 'column', operation: 'tap', hole: 'threaded' },
        },
      ],
    },
  ],
});
