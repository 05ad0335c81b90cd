import { verdictTitles } from '../../../machining/verdict-titles.ts';
import { listed } from '../../listing.ts';
import { definePartRule } from '../../rule.ts';
import { carrierWords, lackWords, setupNeeds, waysWords } from '../../setup-sentences.ts';

/** Clear as drawn, and not with every dimension at the worse of its limits. */
export default definePartRule({
  id: 'setup-at-the-limit',
  title: 'Set-up that clears only as drawn',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: setupNeeds,
  messages: {
    limit: '{part} clears in {setup} on {machine} as drawn, and not at the worst of its limits: {what}.',
  },
  remedies: { limit: '{ways}' },

  check: (facts) =>
    facts.setups.flatMap((fact) => {
      const unit = facts.settings.lengthUnit;
      const tight = fact.check.verdicts.filter(({ state }) => state === 'at the limit');
      const [worst] = [...tight].sort((a, b) => leastOf(a) - leastOf(b));
      if (!worst) return [];
      const what = tight.map(
        (verdict) =>
          `${verdictTitles[verdict.kind]} it lacks ${lackWords(verdict, unit)}${carrierWords(fact, verdict)}`,
      );
      const data = {
        part: facts.part.name,
        setup: fact.check.setup.name,
        machine: fact.machine?.name ?? 'the machine',
        what: listed(what),
        ways: waysWords(fact, worst, unit, 'Narrow a limit, or measure the casting before it is set up.'),
      };
      return [{ message: 'limit' as const, at: [fact.check.setup.id] as const, data }];
    }),
});

const leastOf = ({
  margin = 0,
  band,
}: {
  readonly margin: number | undefined;
  readonly band: { readonly minus: number };
}) => margin + band.minus;
