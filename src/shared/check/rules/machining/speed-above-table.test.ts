import { dimensionId, stationId } from '../../../../../tests/support/facts.ts';
import {
  operation,
  operationId,
  type RouteGiven,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './speed-above-table.ts';

const facts = (speed: string, over: RouteGiven = {}) =>
  routeRuleFacts({
    ...routeCasting,
    operations: [
      operation('turn', 'turn', {
        cut: {
          ends: [
            { station: stationId('left'), beyond: '' },
            { station: stationId('right'), beyond: '' },
          ],
          diameter: { size: dimensionId('boss'), written: '' },
          inner: { written: '' },
        },
        chosen: { speed, rpm: '', feed: '', depth: '', minutes: '' },
      }),
    ],
    ...over,
  });
const source = 'a lathe maker’s handbook to a college’s table of machine tool speeds, HSS';
const said = { operation: 'turn', part: 'column', metal: 'mild steel', edge: 'HSS', source };

testRule(rule, {
  passes: [
    { name: 'as the table has it', facts: facts('') },
    { name: 'at its end', facts: facts('76.2') },
    { name: 'a metal that nothing is known of', facts: facts('500', { part: { material: 'unobtainium' } }) },
  ],
  finds: [
    {
      name: 'faster',
      facts: facts('100'),
      findings: [
        { message: 'fast', at: [operationId('turn')], data: { ...said, speed: '100 m/min', most: '76 m/min' } },
      ],
    },
    {
      name: 'in a build of inches',
      facts: facts('100', { lengthUnit: 'in' }),
      findings: [
        { message: 'fast', at: [operationId('turn')], data: { ...said, speed: '328 ft/min', most: '250 ft/min' } },
      ],
    },
  ],
});
