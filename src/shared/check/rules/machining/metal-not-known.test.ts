import { partId } from '../../../../../tests/support/facts.ts';
import { operation, routeCasting, routePart, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { operationFacts } from '../../../machining/route/operation-facts.ts';
import rule from './metal-not-known.ts';

const operations = [operation('turn', 'turn'), operation('drill', 'drill'), operation('scrape', 'scrape')];
const facts = (material: string, some = operations) =>
  routeRuleFacts({ ...routeCasting, part: { material }, operations: some });
const grouped = () => {
  const of = routePart({ ...routeCasting, part: { material: 'scrap of the yard' }, operations });
  const material = { name: 'scrap of the yard', cuttingGroup: 'K', source: 'spark test' } as const;
  return { part: of.part, operations: operationFacts({ ...of, material }) };
};
const at = [partId('column')] as const;

testRule(rule, {
  passes: [
    { name: 'known', facts: facts('mild steel') },
    { name: 'known by its name', facts: facts('old aluminium pistons') },
    { name: 'work that needs no speed', facts: facts('', [operation('scrape', 'scrape')]) },
  ],
  finds: [
    { name: 'not said', facts: facts(' '), findings: [{ message: 'unsaid', at, data: { part: 'column' } }] },
    {
      name: 'not known',
      facts: facts('unobtainium'),
      findings: [{ message: 'unknown', at, data: { part: 'column', material: 'unobtainium' } }],
    },
    {
      name: 'by its group alone',
      facts: grouped(),
      findings: [
        {
          message: 'group',
          at,
          data: {
            part: 'column',
            material: 'scrap of the yard',
            metal: 'hard grey iron',
            what: 'grey iron above about 200 Brinell',
          },
        },
      ],
    },
  ],
});
