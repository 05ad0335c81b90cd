import { axis, part, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './axis-without-datum.ts';

const groups = [{ origin: stationId('foot'), stations: [stationId('foot')] }];

testRule(rule, {
  passes: [
    { name: 'no axes', facts: { part: part('column'), axes: [] } },
    { name: 'a datum', facts: { part: part('column'), axes: [axis({ datum: stationId('foot'), groups })] } },
  ],
  finds: [
    {
      name: 'an axis with stations and no datum',
      facts: { part: part('column'), axes: [axis({ groups, axis: 'X' })] },
      findings: [{ message: 'none', at: [stationId('foot')], data: { axis: 'X', part: 'column' } }],
    },
  ],
});
