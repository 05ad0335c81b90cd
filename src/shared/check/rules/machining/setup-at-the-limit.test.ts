import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { setupFactOf, setupFacts, setupId, verdict } from '../../../../../tests/support/setup-facts.ts';
import { verdictTitles } from '../../../machining/verdict-titles.ts';
import rule from './setup-at-the-limit.ts';

testRule(rule, {
  passes: [
    { name: 'what hits is told elsewhere', facts: setupFacts(setupFactOf({ verdicts: [verdict('over-bed')] })) },
    { name: 'what clears', facts: setupFacts(setupFactOf({ verdicts: [verdict('over-bed', { state: 'clears' })] })) },
  ],
  finds: [
    {
      name: 'clear by 0.2 mm where limits take 0.5 mm',
      facts: setupFacts(setupFactOf({ verdicts: [verdict('over-bed', { state: 'at the limit', margin: 0.2 })] })),
      findings: [
        {
          message: 'limit',
          at: [setupId('first')],
          data: {
            part: 'column',
            setup: 'first setting',
            machine: 'small lathe',
            what: `${verdictTitles['over-bed']} it lacks 0.3 mm, carried by boss and pivot height`,
            ways: 'Turn it end for end.',
          },
        },
      ],
    },
  ],
});
