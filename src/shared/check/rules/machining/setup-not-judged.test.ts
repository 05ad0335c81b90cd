import { stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { setupFactOf, setupFacts, setupId } from '../../../../../tests/support/setup-facts.ts';
import rule from './setup-not-judged.ts';

const lost = stationId('foot');

testRule(rule, {
  passes: [{ name: 'all is known', facts: setupFacts(setupFactOf()) }],
  finds: [
    {
      name: 'no machine',
      facts: setupFacts(setupFactOf({ unknown: [{ is: 'machine' }] })),
      findings: [{ message: 'machine', at: [setupId('first')], data: { setup: 'first setting', part: 'column' } }],
    },
    {
      name: 'no line, and a station that stands nowhere',
      facts: setupFacts(
        setupFactOf({ unknown: [{ is: 'line' }, { is: 'station', station: lost }] }, { names: { [lost]: 'foot' } }),
      ),
      findings: [
        {
          message: 'unknown',
          at: [setupId('first'), lost],
          data: {
            setup: 'first setting',
            part: 'column',
            what: 'the line that it turns about or moves along and where foot stands',
          },
        },
      ],
    },
  ],
});
