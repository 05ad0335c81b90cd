import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Height under spindle, ram, wheel or guide, and depth to the column. */
export default definePartRule({
  id: 'does-not-fit-machine',
  title: 'Work too large for the machine',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'in-throat':
      '{part} does not fit before the column of {machine} in {setup}, by {over}{carrier}: it needs {needs}, and {has} is there.',
    daylight:
      '{part} does not fit under the spindle of {machine} in {setup}{cut}, by {over}{carrier}: with its tool it needs {needs}, and {has} is there.',
    'under-ram':
      '{part} does not fit under {machine} in {setup}, by {over}{carrier}: it needs {needs}, and {has} is there.',
    'under-wheel':
      '{part} does not fit under the wheel of {machine} in {setup}, by {over}{carrier}: it needs {needs}, and {has} is there.',
    'saw-height':
      '{part} does not fit under the guide of {machine} in {setup}, by {over}{carrier}: it needs {needs}, and {has} is there.',
  },
  remedies: {
    'in-throat': '{ways}',
    daylight: '{ways}',
    'under-ram': '{ways}',
    'under-wheel': '{ways}',
    'saw-height': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['in-throat', 'daylight', 'under-ram', 'under-wheel', 'saw-height'],
      'Set it up another way round, clamp it lower, or use a larger machine.',
      true,
    ),
});
