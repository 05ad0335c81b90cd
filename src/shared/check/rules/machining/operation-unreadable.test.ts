import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './operation-unreadable.ts';

const chosen = { speed: '', rpm: '', feed: '', depth: '', minutes: '' };
const facts = (over: Parameters<typeof operation>[2]) =>
  routeRuleFacts({ ...routeCasting, operations: [operation('turn', 'turn', over)] });

testRule(rule, {
  passes: [
    { name: 'nothing is written', facts: facts({}) },
    { name: 'figures with their units', facts: facts({ chosen: { ...chosen, rpm: '450 rpm', feed: '0.1 mm/rev' } }) },
  ],
  finds: [
    {
      name: 'words where a figure is due, in one finding',
      facts: facts({ leaves: ' a bit ', chosen: { ...chosen, rpm: 'fast' } }),
      findings: [
        {
          message: 'text',
          at: [operationId('turn')],
          data: {
            operation: 'turn',
            part: 'column',
            texts: 'a bit”, “fast',
            fields: 'the stock that it leaves, its turns',
          },
        },
      ],
    },
  ],
});
