import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { setupFactOf, setupFacts, setupId } from '../../../../../tests/support/setup-facts.ts';
import rule from './balance-not-known.ts';

testRule(rule, {
  passes: [{ name: 'all is known', facts: setupFacts(setupFactOf()) }],
  finds: [
    {
      name: 'a metal without density',
      facts: setupFacts(setupFactOf({ balanceUnknown: [{ is: 'material', name: 'pot metal' }] })),
      findings: [
        {
          message: 'unknown',
          at: [setupId('first')],
          data: { part: 'column', setup: 'first setting', what: 'the density of pot metal' },
        },
      ],
    },
  ],
});
