import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** A drill or cutter lies outside the range of the chuck; with a taper shank it may go in all the same. */
export default definePartRule({
  id: 'chuck-does-not-take-tool',
  title: 'Tool that the chuck does not take',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: setupNeeds,
  messages: {
    'chuck-range':
      'The chuck of {machine} does not take the tool{cut} of {part} in {setup}: {has} where {needs} is asked for.',
  },
  remedies: {
    'chuck-range': '{ways}',
  },

  check: (facts) => hits(facts, ['chuck-range'], 'Take another tool, or one with a shank that fits the spindle.', true),
});
