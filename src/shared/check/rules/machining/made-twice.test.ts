import { stationId } from '../../../../../tests/support/facts.ts';
import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './made-twice.ts';

const facts = (leaves: string) =>
  routeRuleFacts({
    ...routeCasting,
    operations: [
      operation('mill', 'mill', { makes: [stationId('top')], leaves }),
      operation('grind', 'grind', { makes: [stationId('top')] }),
    ],
  });

testRule(rule, {
  passes: [{ name: 'something is left', facts: facts('0.2') }],
  finds: [
    {
      name: 'nothing is left',
      facts: facts(''),
      findings: [
        {
          message: 'twice',
          at: [operationId('grind'), operationId('mill'), stationId('top')],
          data: { part: 'column', first: 'mill', next: 'grind', what: 'top' },
        },
      ],
    },
  ],
});
