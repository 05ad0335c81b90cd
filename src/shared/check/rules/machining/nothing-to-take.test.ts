import {
  operation,
  operationId,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './nothing-to-take.ts';

const facts = (leaves: string, allowance: string) =>
  routeRuleFacts({
    ...routeCasting,
    setups: [setup('u', { allowance })],
    operations: [operation('mill', 'mill', { setup: setupId('u'), leaves })],
  });

testRule(rule, {
  passes: [
    { name: 'less is left than there is', facts: facts('1', '3') },
    { name: 'stock that is not known', facts: facts('1', '') },
  ],
  finds: [
    {
      name: 'more is left than there is',
      facts: facts('3', '2'),
      findings: [
        {
          message: 'none',
          at: [operationId('mill')],
          data: { operation: 'mill', part: 'column', leavesMm: 3, findsMm: 2 },
        },
      ],
    },
  ],
});
