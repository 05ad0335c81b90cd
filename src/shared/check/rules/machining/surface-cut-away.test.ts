import { stationId } from '../../../../../tests/support/facts.ts';
import {
  blockOf,
  operation,
  operationId,
  routeBody,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './surface-cut-away.ts';

const bodies = [
  routeCasting.bodies[0],
  routeBody('lug', blockOf(['right', 'lug'], ['front', 'back'], ['foot', 'top'])),
  routeBody('sawn', blockOf(['right', 'lug'], ['front', 'back'], ['foot', 'top']), { adds: false, finish: 'machined' }),
];
const saw = operation('saw', 'saw', { makes: [routeBodyId('sawn')] });
const mill = operation('mill', 'mill', { from: [stationId('lug')] });

testRule(rule, {
  passes: [
    { name: 'measured while it is there', facts: routeRuleFacts({ ...routeCasting, bodies, operations: [mill, saw] }) },
  ],
  finds: [
    {
      name: 'measured when it is gone',
      facts: routeRuleFacts({ ...routeCasting, bodies, operations: [saw, mill] }),
      findings: [
        {
          message: 'gone',
          at: [operationId('mill'), operationId('saw'), stationId('lug'), routeBodyId('sawn')],
          data: { part: 'column', needs: 'mill', cuts: 'saw', what: 'lug', body: 'sawn' },
        },
      ],
    },
  ],
});
