import { settings } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { lathe, machineId } from '../../../../../tests/support/setup-facts.ts';
import { readFigures } from '../../../plan/machine-figures-read.ts';
import rule from './machine-figure-unreadable.ts';

const facts = (swing: string) => ({ settings: settings(), machines: [lathe({ figures: { swingOverBed: swing } })] });

testRule(rule, {
  passes: [
    { name: 'a length', facts: facts('180 mm') },
    { name: 'nothing written', facts: facts('') },
  ],
  finds: [
    {
      name: 'a word',
      facts: facts('about nine'),
      findings: [
        {
          message: 'figure',
          at: [machineId('lathe')],
          data: {
            figure: 'Swing over bed',
            machine: 'small lathe',
            problem: readFigures(lathe({ figures: { swingOverBed: 'about nine' } }), 'mm').problems[0]!.problem,
          },
        },
      ],
    },
  ],
});
