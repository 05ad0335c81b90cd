import {
  operation,
  operationId,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './setup-own-state.ts';

const facts = (own: boolean) =>
  routeRuleFacts({
    ...routeCasting,
    setups: [setup('u', { state: { is: 'after', operation: operationId('saw') } })],
    operations: [
      operation('saw', 'saw', own ? { setup: setupId('u') } : {}),
      operation('turn', 'turn', { setup: setupId('u') }),
    ],
  });

testRule(rule, {
  passes: [{ name: 'after what is done elsewhere', facts: facts(false) }],
  finds: [
    {
      name: 'after what is done in it',
      facts: facts(true),
      findings: [
        {
          message: 'own',
          at: [setupId('u'), operationId('saw')],
          data: { part: 'column', setup: 'u', operation: 'saw' },
        },
      ],
    },
  ],
});
