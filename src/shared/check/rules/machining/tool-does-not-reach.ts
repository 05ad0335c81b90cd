import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Held as said, the edge does not come to its cut: the block meets the work beside it, or bar or drill is too short. */
export default definePartRule({
  id: 'tool-does-not-reach',
  title: 'Tool that does not reach',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'tool-reach':
      'The tool does not reach{cut} of {part} in {setup} on {machine}, by {over}{place}{carrier}: it must stand out {needs}, and does {has}.',
  },
  remedies: {
    'tool-reach': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['tool-reach'],
      'Let the tool stand farther out, if it is stiff enough, or cut it from another side.',
      true,
    ),
});
