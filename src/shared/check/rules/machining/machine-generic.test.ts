import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { lathe, machineId, setupFactOf, setupFacts, setupId } from '../../../../../tests/support/setup-facts.ts';
import rule from './machine-generic.ts';

testRule(rule, {
  passes: [
    { name: 'a machine that was measured', facts: setupFacts(setupFactOf()) },
    { name: 'no machine', facts: setupFacts(setupFactOf({}, { machine: undefined })) },
  ],
  finds: [
    {
      name: 'a generic row',
      facts: setupFacts(setupFactOf({}, { machine: lathe({ generic: true }) })),
      findings: [
        {
          message: 'generic',
          at: [setupId('first'), machineId('lathe')],
          data: { setup: 'first setting', part: 'column', machine: 'small lathe' },
        },
      ],
    },
  ],
});
