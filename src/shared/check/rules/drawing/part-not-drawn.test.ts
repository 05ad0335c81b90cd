import { fact, part, partId, station } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './part-not-drawn.ts';

testRule(rule, {
  passes: [
    { name: 'a dimension', facts: { part: part('column'), stations: [], dimensions: [fact('bore', 25)] } },
    { name: 'a bought part', facts: { part: part('bearing', { make: 'bought' }), stations: [], dimensions: [] } },
  ],
  finds: [
    {
      name: 'nothing at all',
      facts: { part: part('column'), stations: [], dimensions: [] },
      findings: [{ message: 'nothing', at: [partId('column')], data: { part: 'column' } }],
    },
    {
      name: 'stations alone',
      facts: { part: part('column'), stations: [station('foot')], dimensions: [] },
      findings: [{ message: 'no-dimensions', at: [partId('column')], data: { part: 'column' } }],
    },
  ],
});
