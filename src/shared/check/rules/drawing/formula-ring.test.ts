import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './formula-ring.ts';

const member = (name: string, of: string) => ({ dimension: fact(name, undefined).record, part: part(of) });

testRule(rule, {
  passes: [{ name: 'no rings', facts: { rings: [] } }],
  finds: [
    {
      name: 'a ring over two parts, named all round',
      facts: { rings: [[member('bore', 'column'), member('diameter', 'ram')]] },
      findings: [
        {
          message: 'ring',
          at: [dimensionId('bore'), dimensionId('diameter')],
          data: { ring: 'bore of column → diameter of ram → bore of column' },
        },
      ],
    },
    {
      name: 'a formula that names itself',
      facts: { rings: [[member('bore', 'column')]] },
      findings: [{ message: 'self', at: [dimensionId('bore')], data: { ring: 'bore of column' } }],
    },
  ],
});
