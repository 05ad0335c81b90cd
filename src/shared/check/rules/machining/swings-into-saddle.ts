import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Where the saddle must stand for a cut, what turns reaches into its wings or into the cross slide. */
export default definePartRule({
  id: 'swings-into-saddle',
  title: 'Work that hits the saddle',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'over-saddle':
      '{part} hits the wings of the saddle of {machine} by {over} in {setup}, where the saddle stands{cut}{place}{carrier}: it reaches {needs} from the line, and {has} is free.',
    'over-cross-slide':
      '{part} hits the cross slide of {machine} by {over} in {setup}, where the saddle stands{cut}{place}{carrier}: it reaches {needs} from the line, and {has} is free.',
  },
  remedies: {
    'over-saddle': '{ways}',
    'over-cross-slide': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['over-saddle', 'over-cross-slide'],
      'Cut it from another side, hold it otherwise, machine it on a larger lathe, or draw it smaller.',
    ),
});
