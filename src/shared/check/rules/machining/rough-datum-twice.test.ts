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
import rule from './rough-datum-twice.ts';

const from = [stationId('left')];
const setups = ['u', 'v', 'w'].map((name) => setup(name));
const facts = (...sets: readonly string[]) =>
  routeRuleFacts({
    ...routeCasting,
    setups,
    operations: sets.map((set, i) => operation(`op ${i + 1}`, 'mill', { from, setup: setupId(set) })),
  });

testRule(rule, {
  passes: [
    { name: 'once', facts: facts('u') },
    { name: 'twice in one set-up', facts: facts('u', 'u') },
  ],
  finds: [
    {
      name: 'in three set-ups',
      facts: facts('u', 'v', 'w'),
      findings: [
        {
          message: 'twice',
          at: [stationId('left'), operationId('op 1'), operationId('op 2'), operationId('op 3')],
          data: { part: 'column', operations: 'op 1, op 2 and op 3', what: 'left' },
        },
      ],
    },
  ],
});
