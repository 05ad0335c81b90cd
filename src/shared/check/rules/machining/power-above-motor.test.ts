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
import rule from './power-above-motor.ts';

const facts = (depth: string, figures: Parameters<typeof machine>[2]) =>
  routeRuleFacts({
    ...routeCasting,
    machines: [machine('lathe', 'lathe', figures)],
    setups: [setup('u', { machine: machineId('lathe'), allowance: '3' })],
    operations: [
      operation('turn', 'turn', {
        setup: setupId('u'),
        cut: {
          ends: [
            { station: stationId('left'), beyond: '' },
            { station: stationId('right'), beyond: '' },
          ],
          diameter: { size: dimensionId('boss'), written: '' },
          inner: { written: '' },
        },
        chosen: { speed: '30', rpm: '', feed: '0.25', depth, minutes: '' },
      }),
    ],
  });

testRule(rule, {
  passes: [
    { name: 'cuts as the motor drives them', facts: facts('', { power: '0.37 kW' }) },
    { name: 'a motor that is not known', facts: facts('3', {}) },
    { name: 'a strong one', facts: facts('3', { power: '3 kW' }) },
  ],
  finds: [
    {
      // 1350 · 0.25^(1 − 0.21) · 3 mm = 1355 N at 30 m/min are 0.68 kW, and 0.97 kW with the drive.
      name: 'three millimetres at one go',
      facts: facts('3', { power: '0.37 kW' }),
      findings: [
        {
          message: 'power',
          at: [operationId('turn'), machineId('lathe')],
          data: {
            operation: 'turn',
            part: 'column',
            machine: 'lathe',
            needs: '0.97 kW',
            has: '0.37 kW',
            kept: 70,
            source: 'common practice, no source',
          },
        },
      ],
    },
  ],
});
