import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** What turns reaches farther from the line of centres than the bed, or its gap, allows. */
export default definePartRule({
  id: 'swings-into-bed',
  title: 'Work that hits the bed',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'over-bed':
      '{part} hits the bed of {machine} by {over} in {setup}{place}{carrier}: it reaches {needs} from the line that it turns about, and {has} is free.',
    'in-gap':
      '{part} hits the bottom of the gap of {machine} by {over} in {setup}{place}{carrier}: it reaches {needs} from the line that it turns about, and {has} is free.',
  },
  remedies: {
    'over-bed': '{ways}',
    'in-gap': '{ways}',
  },

  check: (facts) =>
    hits(facts, ['over-bed', 'in-gap'], 'Hold it otherwise, machine it on a larger lathe, or draw it smaller.'),
});
