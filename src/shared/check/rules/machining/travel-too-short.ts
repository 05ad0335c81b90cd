import { definePartRule } from '../../rule.ts';
import { hits, setupNeeds } from '../../setup-sentences.ts';

/** Slides, quill, stroke or table do not go as far as a cut asks. */
export default definePartRule({
  id: 'travel-too-short',
  title: 'Cut longer than the travel',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    'cross-travel':
      'The cross slide of {machine} travels {has}, and the face that it cuts{cut} of {part} in {setup} asks for {needs}{carrier}.',
    'quill-travel':
      'The quill of {machine} travels {has}, and the hole{cut} of {part} in {setup} asks for {needs}{carrier}.',
    stroke:
      'The stroke of {machine} is {has}, and the cut{cut} of {part} in {setup} asks for {needs} with its overrun{carrier}.',
    'head-travel':
      'The head of {machine} travels {has}, and the cut{cut} of {part} in {setup} asks for {needs}{carrier}.',
    'table-travel':
      'The feed of {machine} travels {has} across, and the cut{cut} of {part} in {setup} asks for {needs}{carrier}.',
    'travel-x':
      'The long travel of {machine} is {has}, and what is cut{cut} of {part} in {setup} asks for {needs}{carrier}.',
    'travel-y':
      'The cross travel of {machine} is {has}, and the cut{cut} of {part} in {setup} asks for {needs}{carrier}.',
    'travel-z':
      'The upright travel of {machine} is {has}, and the cut{cut} of {part} in {setup} asks for {needs}{carrier}.',
  },
  remedies: {
    'cross-travel': '{ways}',
    'quill-travel': '{ways}',
    stroke: '{ways}',
    'head-travel': '{ways}',
    'table-travel': '{ways}',
    'travel-x': '{ways}',
    'travel-y': '{ways}',
    'travel-z': '{ways}',
  },

  check: (facts) =>
    hits(
      facts,
      ['cross-travel', 'quill-travel', 'stroke', 'head-travel', 'table-travel', 'travel-x', 'travel-y', 'travel-z'],
      'Cut it in two settings, set it up another way round, or use a larger machine.',
      true,
    ),
});
