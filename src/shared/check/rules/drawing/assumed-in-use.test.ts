import { axis, between, dimensionId, fact, part, size, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './assumed-in-use.ts';

const exact = { minus: 0, plus: 0, rss: 0, rssCentre: 0 };
const assumed = { source: 'assumed' as const, measure: between('foot', 'top') };
const placed = axis({
  stations: [{ id: stationId('top'), group: 0, at: 100, band: exact, path: [dimensionId('height')] }],
});

testRule(rule, {
  passes: [
    { name: 'a drawn one in use', facts: { part: part('column'), dimensions: [fact('height', 100)], axes: [placed] } },
    {
      name: 'one without a value',
      facts: { part: part('column'), dimensions: [fact('height', undefined, assumed)], axes: [] },
    },
    {
      name: 'a distance that places nothing',
      facts: { part: part('column'), dimensions: [fact('spare', 9, assumed)], axes: [placed] },
    },
  ],
  finds: [
    {
      name: 'one that places a station',
      facts: { part: part('column'), dimensions: [fact('height', 100, assumed)], axes: [placed] },
      findings: [
        {
          message: 'places',
          at: [dimensionId('height')],
          data: { name: 'height', part: 'column', valueMm: 100, stations: '1 station' },
        },
      ],
    },
    {
      name: 'one that formulas name',
      facts: {
        part: part('column'),
        dimensions: [fact('spare', 9, { ...assumed, namedBy: [dimensionId('a'), dimensionId('b')] })],
        axes: [],
      },
      findings: [
        {
          message: 'named',
          at: [dimensionId('spare')],
          data: { name: 'spare', part: 'column', valueMm: 9, formulas: '2 formulas' },
        },
      ],
    },
    {
      name: 'a size',
      facts: {
        part: part('column'),
        dimensions: [fact('slope', 30, { source: 'assumed', measure: size('angle') })],
        axes: [],
      },
      findings: [
        { message: 'size', at: [dimensionId('slope')], data: { name: 'slope', part: 'column', valueDeg: 30 } },
      ],
    },
  ],
});
