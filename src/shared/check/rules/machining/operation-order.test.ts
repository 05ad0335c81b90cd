import { dimensionId, stationId } from '../../../../../tests/support/facts.ts';
import {
  operation,
  operationId,
  type RouteGiven,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
  setup,
  setupId,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './operation-order.ts';

const facts = (over: RouteGiven) => routeRuleFacts({ ...routeCasting, ...over });
const [a, b] = [operationId('a'), operationId('b')];
const data = { part: 'column', first: 'b', next: 'a' };

testRule(rule, {
  passes: [
    { name: 'a part without a route', facts: facts({}) },
    {
      name: 'what is there when it is needed',
      facts: facts({
        operations: [
          operation('b', 'mill', { makes: [stationId('foot')] }),
          operation('a', 'mill', { from: [stationId('foot')] }),
        ],
      }),
    },
    {
      name: 'a wish that is not met is a finding of its own',
      facts: facts({
        operations: [
          operation('a', 'mill', { makes: [stationId('top')] }),
          operation('b', 'mill', { makes: [stationId('foot')] }),
        ],
      }),
    },
  ],
  finds: [
    {
      name: 'located by what is made later',
      facts: facts({
        operations: [
          operation('a', 'mill', { from: [stationId('foot')] }),
          operation('b', 'mill', { makes: [stationId('foot')] }),
        ],
      }),
      findings: [{ message: 'from', at: [a, b, stationId('foot')], data: { ...data, what: 'foot' } }],
    },
    {
      name: 'held by what is made later',
      facts: facts({
        setups: [
          setup('vise', {
            holding: { as: 'clamped to the table', seat: { station: stationId('floor'), beyond: '' } },
          }),
        ],
        operations: [
          operation('a', 'mill', { setup: setupId('vise') }),
          operation('b', 'mill', { makes: [stationId('floor')] }),
        ],
      }),
      findings: [
        {
          message: 'held',
          at: [a, b, stationId('floor'), setupId('vise')],
          data: { ...data, what: 'floor', setup: 'vise' },
        },
      ],
    },
    {
      name: 'written to come after',
      facts: facts({ operations: [operation('a', 'file', { after: [b] }), operation('b', 'file')] }),
      findings: [{ message: 'after', at: [a, b], data }],
    },
    {
      name: 'a set-up that begins later',
      facts: facts({
        setups: [setup('u', { state: { is: 'after', operation: b } })],
        operations: [operation('a', 'turn', { setup: setupId('u') }), operation('b', 'saw')],
      }),
      findings: [{ message: 'state', at: [a, b, setupId('u')], data: { ...data, setup: 'u' } }],
    },
    {
      name: 'tapped before it is drilled',
      facts: facts({
        operations: [
          operation('a', 'tap', { makes: [dimensionId('tapped')] }),
          operation('b', 'drill', { makes: [routeBodyId('threaded')] }),
        ],
      }),
      findings: [{ message: 'hole', at: [a, b, routeBodyId('threaded')], data: { ...data, what: 'threaded' } }],
    },
    {
      name: 'finished before it is roughed',
      facts: facts({
        operations: [
          operation('a', 'mill', { makes: [stationId('foot')] }),
          operation('b', 'mill', { makes: [stationId('foot')], leaves: '1' }),
        ],
      }),
      findings: [{ message: 'stock', at: [a, b, stationId('foot')], data: { ...data, what: 'foot' } }],
    },
  ],
});
