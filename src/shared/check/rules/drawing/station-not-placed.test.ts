import { axis, between, dimensionId, fact, part, station, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './station-not-placed.ts';

const stations = [station('foot', { datum: true }), station('top'), station('lug'), station('boss')];
const groups = [
  { origin: stationId('foot'), stations: [stationId('foot'), stationId('top')] },
  { origin: stationId('lug'), stations: [stationId('lug'), stationId('boss')] },
];
const tie = { from: stationId('top'), to: stationId('lug'), dimension: undefined, reason: 'nearest-in-list' } as const;
const gap = dimensionId('gap');
const words = { stations: 'lug and boss', others: 'foot and top', part: 'column', axis: 'Z', from: 'top', to: 'lug' };
const withGap = (over: object) => ({
  part: part('column'),
  stations,
  dimensions: [fact('gap', undefined, { measure: between('top', 'lug'), ...over })],
  axes: [axis({ groups, ties: [{ ...tie, dimension: gap, reason: 'empty-dimension' }] })],
});

testRule(rule, {
  passes: [
    { name: 'no axes', facts: { part: part('column'), stations: [], dimensions: [], axes: [] } },
    {
      name: 'one group',
      facts: { part: part('column'), stations, dimensions: [], axes: [axis({ groups: groups.slice(0, 1) })] },
    },
  ],
  finds: [
    {
      name: 'a group apart, with both groups and the likely tie',
      facts: { part: part('column'), stations, dimensions: [], axes: [axis({ groups, ties: [tie] })] },
      findings: [{ message: 'apart', at: [stationId('lug'), stationId('top')], data: words }],
    },
    {
      name: 'the empty dimension that would bridge, foremost',
      facts: withGap({}),
      findings: [
        { message: 'no-value', at: [gap, stationId('lug'), stationId('top')], data: { ...words, dimension: 'gap' } },
      ],
    },
    {
      name: 'a bridging dimension that cannot be worked out',
      facts: withGap({ resolved: { problem: { why: 'waiting', causes: [dimensionId('ram')] } } }),
      findings: [
        {
          message: 'not-worked-out',
          at: [gap, stationId('lug'), stationId('top')],
          data: { ...words, dimension: 'gap' },
        },
      ],
    },
  ],
});
