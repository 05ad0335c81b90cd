import { definePartRule } from '../../rule.ts';
import { setupNeeds } from '../../setup-sentences.ts';

/** Saddle, tool and travels are judged by the cuts that are made in a set-up: without one they are not looked at. */
export default definePartRule({
  id: 'setup-without-operation',
  title: 'Set-up in which nothing is done',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: setupNeeds,
  messages: {
    nothing: 'No operation of {part} is done in {setup}, so room for saddle, tool and travels was not looked at.',
  },
  remedies: { nothing: 'Name {setup} in the operations that are done in it, or take it out.' },

  check: ({ part, setups }) =>
    setups.flatMap(({ check: { setup }, operations }) =>
      operations.length > 0
        ? []
        : [{ message: 'nothing' as const, at: [setup.id] as const, data: { setup: setup.name, part: part.name } }],
    ),
});
