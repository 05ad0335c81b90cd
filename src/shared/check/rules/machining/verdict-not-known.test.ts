import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { machineId, setupFactOf, setupFacts, setupId, verdict } from '../../../../../tests/support/setup-facts.ts';
import { verdictTitles } from '../../../machining/verdict-titles.ts';
import rule from './verdict-not-known.ts';

testRule(rule, {
  passes: [{ name: 'all is judged', facts: setupFacts(setupFactOf({ verdicts: [verdict('over-bed')] })) }],
  finds: [
    {
      name: 'a figure of the machine',
      facts: setupFacts(
        setupFactOf(
          {
            verdicts: [
              verdict('over-bed', {
                state: 'unknown',
                unknown: [{ is: 'figure', machine: machineId('lathe'), key: 'swingOverBed' }],
              }),
            ],
          },
          { names: { [machineId('lathe')]: 'small lathe' } },
        ),
      ),
      findings: [
        {
          message: 'unknown',
          at: [setupId('first')],
          data: {
            setup: 'first setting',
            part: 'column',
            about: verdictTitles['over-bed'],
            what: 'swing over bed of small lathe',
          },
        },
      ],
    },
  ],
});
