import { stationId } from '../../../../../tests/support/facts.ts';
import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './datum-first.ts';

const top = operation('top face', 'mill', { makes: [stationId('top')] });
const foot = operation('foot face', 'mill', { makes: [stationId('foot')] });

testRule(rule, {
  passes: [
    { name: 'datum first', facts: routeRuleFacts({ ...routeCasting, operations: [foot, top] }) },
    {
      name: 'measured from something else',
      facts: routeRuleFacts({ ...routeCasting, operations: [{ ...top, from: [stationId('floor')] }, foot] }),
    },
    { name: 'a datum that nothing makes', facts: routeRuleFacts({ ...routeCasting, operations: [top] }) },
  ],
  finds: [
    {
      name: 'datum last',
      facts: routeRuleFacts({ ...routeCasting, operations: [top, foot] }),
      findings: [
        {
          message: 'late',
          at: [operationId('top face'), operationId('foot face'), stationId('top'), stationId('foot')],
          data: { part: 'column', first: 'foot face', next: 'top face', what: 'top', datum: 'foot' },
        },
      ],
    },
  ],
});
