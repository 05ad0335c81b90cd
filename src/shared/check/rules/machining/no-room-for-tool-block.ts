import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Beside chuck, face plate or tailstock the tool block finds no room for a cut. */
export default definePartRule({
  id: 'no-room-for-tool-block',
  title: 'Tool block without room',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'tool-block-head':
      'The tool block meets what the spindle of {machine} carries by {over}{cut} of {part} in {setup}{carrier}: it needs {needs}, and {has} is there.',
    'tool-block-tail':
      'The tool block meets the tailstock of {machine} by {over}{cut} of {part} in {setup}{carrier}: it needs {needs}, and {has} is there.',
  },
  remedies: {
    'tool-block-head': '{ways}',
    'tool-block-tail': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['tool-block-head', 'tool-block-tail'],
      'Let the tool stand farther out, use a narrower block, or hold the work farther off.',
      true,
    ),
});
