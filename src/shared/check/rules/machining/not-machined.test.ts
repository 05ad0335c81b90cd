import { dimensionId } from '../../../../../tests/support/facts.ts';
import { operation, routeBodyId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './not-machined.ts';

const bore = operation('bore', 'bore', { makes: [dimensionId('bore')] });
const drill = operation('drill', 'drill', { makes: [routeBodyId('threaded')] });

testRule(rule, {
  passes: [
    { name: 'a route that is not begun', facts: routeRuleFacts(routeCasting) },
    { name: 'all made, by body or by size', facts: routeRuleFacts({ ...routeCasting, operations: [bore, drill] }) },
  ],
  finds: [
    {
      name: 'one is left',
      facts: routeRuleFacts({ ...routeCasting, operations: [bore] }),
      findings: [{ message: 'unmade', at: [routeBodyId('threaded')], data: { body: 'threaded', part: 'column' } }],
    },
  ],
});
