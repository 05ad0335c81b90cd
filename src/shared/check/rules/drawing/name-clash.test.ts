import { axis, dimensionId, fact, part, station, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './name-clash.ts';

const twin = (id: string, name: string, along: 'X' | 'Z' = 'Z') => station(id, { name, axis: along });

testRule(rule, {
  passes: [
    { name: 'nothing', facts: { part: part('column'), stations: [], dimensions: [], axes: [] } },
    {
      name: 'one name on two axes, and for a dimension and a station',
      facts: {
        part: part('column'),
        stations: [twin('a', 'centre', 'X'), twin('b', 'centre', 'Z')],
        dimensions: [fact('centre', 1)],
        axes: [axis({ axis: 'X' }), axis()],
      },
    },
  ],
  finds: [
    {
      name: 'dimensions and stations, upper and lower case alike',
      facts: {
        part: part('column'),
        stations: [twin('a', 'lug'), twin('b', 'Lug')],
        dimensions: [fact('bore', 1), fact('c', 2, { name: 'BORE' })],
        axes: [axis()],
      },
      findings: [
        {
          message: 'dimensions',
          at: [dimensionId('bore'), dimensionId('c')],
          data: { count: 2, part: 'column', name: 'bore' },
        },
        {
          message: 'stations',
          at: [stationId('a'), stationId('b')],
          data: { count: 2, part: 'column', name: 'lug', axis: 'Z' },
        },
      ],
    },
  ],
});
