import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Length between head and tailstock, how far the barrel comes out, and what an arbor has past its work. */
export default definePartRule({
  id: 'no-room-between-centres',
  title: 'Work too long for the lathe',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'between-centres':
      '{part} finds no room between head and tailstock of {machine} in {setup}{cut}, by {over}{carrier}: it takes {needs}, and {has} is there.',
    'barrel-travel':
      'The barrel of the tailstock of {machine} does not come out far enough{cut} of {part} in {setup}, by {over}{carrier}: it must stand out {needs}, and travels {has}.',
    'arbor-length':
      'The arbor of {part} in {setup} stands too little past a face{place}{carrier}: {needs} is needed to hold it, and {has} is there.',
  },
  remedies: {
    'between-centres': '{ways}',
    'barrel-travel': '{ways}',
    'arbor-length': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['between-centres', 'barrel-travel', 'arbor-length'],
      'Use a longer lathe, or hold it otherwise.',
      true,
    ),
});
