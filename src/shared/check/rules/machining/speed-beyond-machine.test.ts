import { dimensionId, stationId } from '../../../../../tests/support/facts.ts';
import {
  machine,
  machineId,
  operation,
  operationId,
  type RouteGiven,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Operation } from '../../../build/operation.ts';
import rule from './speed-beyond-machine.ts';

const cut: Operation['cut'] = {
  ends: [
    { station: stationId('left'), beyond: '' },
    { station: stationId('right'), beyond: '' },
  ],
  diameter: { size: dimensionId('boss'), written: '' },
  inner: { written: '' },
};
const facts = (
  process: Operation['process'],
  rpm: string,
  type: 'lathe' | 'bandsaw' | 'shaper',
  figures: Parameters<typeof machine>[2],
  over: RouteGiven = {},
) =>
  routeRuleFacts({
    ...routeCasting,
    machines: [machine('it', type, figures)],
    setups: [setup('u', { machine: machineId('it') })],
    operations: [
      operation('cut', process, {
        setup: setupId('u'),
        cut,
        chosen: {
          speed: process === 'saw' ? rpm : '',
          rpm: process === 'saw' ? '' : rpm,
          feed: '',
          depth: '',
          minutes: '',
        },
      }),
    ],
    ...over,
  });
const said = { operation: 'cut', part: 'column', machine: 'it' };
const at = [operationId('cut'), machineId('it')] as const;

testRule(rule, {
  passes: [
    { name: 'within what it has', facts: facts('turn', '', 'lathe', { slowestRpm: '60', fastestRpm: '2000' }) },
    { name: 'a machine of which nothing is known', facts: facts('turn', '5000', 'lathe', {}) },
    { name: 'slower than the table is no harm', facts: facts('turn', '', 'lathe', { fastestRpm: '100' }) },
  ],
  finds: [
    {
      name: 'chosen faster',
      facts: facts('turn', '2500', 'lathe', { fastestRpm: '2000' }),
      findings: [{ message: 'fast', at, data: { ...said, unit: 'rpm', asked: 2500, limit: 2000 } }],
    },
    {
      name: 'chosen slower, in strokes',
      facts: facts('shape', '10', 'shaper', { slowestStrokes: '25' }),
      findings: [{ message: 'slow', at, data: { ...said, unit: 'strokes/min', asked: 10, limit: 25 } }],
    },
    {
      name: 'a band that is too fast for the metal',
      facts: facts('saw', '', 'bandsaw', { slowestBand: '120' }),
      findings: [{ message: 'table', at, data: { ...said, unit: 'm/min', asked: '53', limit: '120' } }],
    },
  ],
});
