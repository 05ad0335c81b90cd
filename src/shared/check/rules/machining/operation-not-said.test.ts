import { dimensionId, stationId } from '../../../../../tests/support/facts.ts';
import {
  machine,
  machineId,
  operation,
  operationId,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Operation } from '../../../build/operation.ts';
import rule from './operation-not-said.ts';

const chosen = { speed: '', rpm: '', feed: '', depth: '', minutes: '' };
const cutTo = (station: string): Operation['cut'] => ({
  ends: [
    { station: stationId('left'), beyond: '' },
    { station: stationId(station), beyond: '' },
  ],
  diameter: { size: dimensionId('boss'), written: '' },
  inner: { size: dimensionId('lost'), written: '' },
});
const facts = (process: Operation['process'], over: Partial<Operation>) =>
  routeRuleFacts({
    ...routeCasting,
    stations: { ...routeCasting.stations, lost: ['X', undefined] },
    sizes: { ...routeCasting.sizes, lost: ['diameter', ''] },
    machines: [machine('lathe', 'lathe')],
    setups: [setup('u', { machine: machineId('lathe'), allowance: '1' })],
    operations: [operation('it', process, over)],
  });

testRule(rule, {
  passes: [{ name: 'handwork whose time is said', facts: facts('scrape', { chosen: { ...chosen, minutes: '30' } }) }],
  finds: [
    {
      name: 'handwork without a time',
      facts: facts('scrape', {}),
      findings: [
        { message: 'missing', at: [operationId('it')], data: { operation: 'it', part: 'column', what: 'its time' } },
      ],
    },
    {
      name: 'a place, a size and a motor',
      facts: facts('turn', { setup: setupId('u'), cut: cutTo('lost') }),
      findings: [
        {
          message: 'missing',
          at: [operationId('it'), stationId('lost'), dimensionId('lost')],
          data: {
            operation: 'it',
            part: 'column',
            what: 'the place of lost; a value of lost; the motor power of lathe',
          },
        },
      ],
    },
  ],
});
