import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { hitAt, hitData, setupFactOf, setupFacts, verdict } from '../../../../../tests/support/setup-facts.ts';
import rule from './swings-into-bed.ts';

const kinds = ['over-bed', 'in-gap'] as const;

testRule(rule, {
  passes: [
    { name: 'no set-up', facts: setupFacts() },
    {
      name: 'all that clears, is at its limit or is not known',
      facts: setupFacts(
        setupFactOf({
          verdicts: kinds.flatMap((kind) =>
            (['clears', 'at the limit', 'unknown'] as const).map((state) => verdict(kind, { state })),
          ),
        }),
      ),
    },
    { name: 'what is of another rule', facts: setupFacts(setupFactOf({ verdicts: [verdict('under-wheel')] })) },
  ],
  finds: [
    ...kinds.map((kind) => ({
      name: `${kind} that hits`,
      facts: setupFacts(setupFactOf({ verdicts: [verdict(kind)] })),
      findings: [{ message: kind, at: hitAt, data: hitData('Turn it end for end.') }],
    })),
    {
      name: 'one without a way out',
      facts: setupFacts(setupFactOf({ verdicts: [verdict(kinds[0], { remedies: [] })] })),
      findings: [
        {
          message: kinds[0],
          at: hitAt,
          data: hitData('Hold it otherwise, machine it on a larger lathe, or draw it smaller.'),
        },
      ],
    },
  ],
});
