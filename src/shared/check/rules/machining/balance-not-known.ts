import { definePartRule } from '../../rule.ts';
import { setupNeeds, unknownList } from '../../setup-sentences.ts';

/** How fast work may turn hangs on its mass; without that nothing is promised. */
export default definePartRule({
  id: 'balance-not-known',
  title: 'Balance that cannot be told',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: setupNeeds,
  messages: { unknown: 'How far {part} is out of balance in {setup} cannot be told: not known is {what}.' },
  remedies: { unknown: 'Give what is missing; until then begin at the slowest speed and feel for it.' },

  check: ({ part, setups }) =>
    setups.flatMap((fact) => {
      const { setup, balanceUnknown } = fact.check;
      if (balanceUnknown.length === 0) return [];
      const data = { part: part.name, setup: setup.name, what: unknownList(balanceUnknown, fact) };
      return [{ message: 'unknown' as const, at: [setup.id] as const, data }];
    }),
});
