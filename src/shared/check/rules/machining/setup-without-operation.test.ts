import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { setupFactOf, setupFacts, setupId } from '../../../../../tests/support/setup-facts.ts';
import rule from './setup-without-operation.ts';

testRule(rule, {
  passes: [{ name: 'an operation is done in it', facts: setupFacts(setupFactOf()) }],
  finds: [
    {
      name: 'nothing is done in it',
      facts: setupFacts(setupFactOf({}, { operations: [] })),
      findings: [{ message: 'nothing', at: [setupId('first')], data: { setup: 'first setting', part: 'column' } }],
    },
  ],
});
