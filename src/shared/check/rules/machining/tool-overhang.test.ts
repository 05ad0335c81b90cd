import { operation, operationId, routeCasting, routeRuleFacts } from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Process } from '../../../build/operation.ts';
import rule from './tool-overhang.ts';

const facts = (process: Process, diameter: string, overhang: string) =>
  routeRuleFacts({
    ...routeCasting,
    operations: [
      operation('cut', process, {
        tool: { edge: 'HSS', diameter: { written: diameter }, overhang, teeth: 1, angle: '' },
      }),
    ],
  });
const said = { operation: 'cut', part: 'column' };
const at = [operationId('cut')] as const;
const practice = 'common practice, no source';

testRule(rule, {
  passes: [
    { name: 'a bar of four diameters', facts: facts('bore', '12', '48') },
    { name: 'a drill may be long', facts: facts('drill', '5', '80') },
    { name: 'nothing is said', facts: facts('bore', '12', '') },
  ],
  finds: [
    {
      name: 'a bar',
      facts: facts('bore', '12', '66'),
      findings: [
        {
          message: 'bar',
          at,
          data: { ...said, ratio: '5.5', limit: 4, source: 'tool makers’ guides: steel boring bars up to 4 diameters' },
        },
      ],
    },
    {
      name: 'a cutter',
      facts: facts('mill', '10', '120'),
      findings: [{ message: 'cutter', at, data: { ...said, ratio: '12', limit: 4, source: practice } }],
    },
    {
      name: 'a turning tool',
      facts: facts('turn', '12', '30'),
      findings: [{ message: 'shank', at, data: { ...said, ratio: '2.5', limit: 1.5, source: practice } }],
    },
  ],
});
