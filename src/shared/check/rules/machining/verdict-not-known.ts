import { verdictTitles } from '../../../machining/verdict-titles.ts';
import { distinctUnknowns } from '../../../plan/unknown.ts';
import { listed } from '../../listing.ts';
import { definePartRule } from '../../rule.ts';
import { setupNeeds, unknownList } from '../../setup-sentences.ts';

/** Some of what is asked of a set-up hangs on a figure of the machine, or of a cut, that nobody has given. */
export default definePartRule({
  id: 'verdict-not-known',
  title: 'Figure that a set-up is judged by is not known',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: setupNeeds,
  messages: { unknown: '{setup} of {part} is judged in part only ({about}): not known is {what}.' },
  remedies: { unknown: 'Measure it on the machine, or say it in the set-up or its operations.' },

  check: ({ part, setups }) =>
    setups.flatMap((fact) => {
      const { setup, verdicts } = fact.check;
      const open = verdicts.filter(({ state }) => state === 'unknown');
      if (open.length === 0) return [];
      const unknown = distinctUnknowns(open.flatMap((verdict) => verdict.unknown));
      const about = listed([...new Set(open.map(({ kind }) => verdictTitles[kind]))]);
      const data = { setup: setup.name, part: part.name, about, what: unknownList(unknown, fact) };
      return [{ message: 'unknown' as const, at: [setup.id] as const, data }];
    }),
});
