import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Common practice, no source: a long piece in a short grip works loose, and what hangs over plate or table springs under the cut. */
export default definePartRule({
  id: 'held-too-little',
  title: 'Work that is held by too little',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: setupNeeds,
  messages: {
    'grip-length':
      '{part} is gripped over {has} only in {setup} on {machine}, and what stands free asks for {needs}{carrier}.',
    'face-plate': '{part} stands {over} over the rim of the face plate of {machine} in {setup}{carrier}.',
    'on-table':
      '{part} hangs {over} over the table of {machine} in {setup}{carrier}: it measures {needs}, and the table {has}.',
    'on-plate': '{part} hangs {over} over {machine} in {setup}{carrier}: it measures {needs}, and the plate {has}.',
  },
  remedies: {
    'grip-length': '{ways}',
    'face-plate': '{ways}',
    'on-table': '{ways}',
    'on-plate': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['grip-length', 'face-plate', 'on-table', 'on-plate'],
      'Grip more of it, carry its far end, or clamp it to something larger.',
      true,
    ),
});
