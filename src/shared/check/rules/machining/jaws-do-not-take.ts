import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** What is gripped lies outside the range of chuck, steady or vise, or does not pass into the spindle. */
export default definePartRule({
  id: 'jaws-do-not-take',
  title: 'Work that jaws or steady do not take',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'jaw-range':
      'The jaws of {machine} do not take what {setup} grips of {part}, by {over}{carrier}: {has} where {needs} is asked for.',
    'steady-range':
      'The steady of {machine} does not take what it carries of {part} in {setup}, by {over}{place}{carrier}: {has} where {needs} is asked for.',
    'through-spindle':
      '{part} does not pass into the spindle of {machine} in {setup}, by {over}{place}{carrier}: it reaches {needs} from the line behind the jaws, and the bore leaves {has}.',
    'in-vise': 'The vise does not take {part} in {setup}, by {over}{carrier}: {has} where {needs} is asked for.',
  },
  remedies: {
    'jaw-range': '{ways}',
    'steady-range': '{ways}',
    'through-spindle': '{ways}',
    'in-vise': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['jaw-range', 'steady-range', 'through-spindle', 'in-vise'],
      'Use another chuck or vise, or hold it by something else.',
      true,
    ),
});
