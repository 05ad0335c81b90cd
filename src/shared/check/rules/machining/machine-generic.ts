import { definePartRule } from '../../rule.ts';
import { setupNeeds } from '../../setup-sentences.ts';

/** A generic row of its size class stands for a machine that nobody has measured. */
export default definePartRule({
  id: 'machine-generic',
  title: 'Set-up judged by generic figures',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: setupNeeds,
  messages: {
    generic: '{setup} of {part} is judged by generic figures: {machine} was not held against the machine itself.',
  },
  remedies: { generic: 'Measure the machine, correct its figures, and take the mark of a generic row off it.' },

  check: ({ part, setups }) =>
    setups.flatMap(({ check: { setup }, machine }) =>
      machine?.generic !== true
        ? []
        : [
            {
              message: 'generic' as const,
              at: [setup.id, machine.id] as const,
              data: { setup: setup.name, part: part.name, machine: machine.name },
            },
          ],
    ),
});
