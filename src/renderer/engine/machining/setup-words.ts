import type { HoldingWay } from '../../../shared/build/setup.ts';
import type { VerdictKind } from '../../../shared/machining/setup-check.ts';

export const holdingWords: Readonly<Record<HoldingWay, string>> = {
  'between centres': 'between centres',
  'three-jaw chuck': 'three-jaw chuck',
  'four-jaw chuck': 'four-jaw chuck',
  'face plate': 'face plate',
  steady: 'fixed steady',
  vise: 'vise',
  'clamped to the table': 'on the table',
};

/** What a verdict is about, as its head in a list. */
export const verdictTitles: Readonly<Record<VerdictKind, string>> = {
  'over-bed': 'Over the bed',
  'in-gap': 'In the gap',
  'over-saddle': 'Over the saddle wings',
  'over-cross-slide': 'Over the cross slide',
  'tool-block-head': 'Tool block by the headstock',
  'tool-block-tail': 'Tool block by the tailstock',
  'between-centres': 'Between centres',
  'barrel-travel': 'Barrel out of the tailstock',
  'arbor-length': 'Length of the arbor',
  'face-plate': 'On the face plate',
  'jaw-range': 'Range of the jaws',
  'grip-length': 'Length gripped',
  'through-spindle': 'Through the spindle',
  'steady-range': 'Range of the steady',
  'tool-reach': 'Reach of the tool',
  'cross-travel': 'Travel of the cross slide',
  'in-throat': 'In the throat',
  daylight: 'Under the spindle',
  'quill-travel': 'Travel of the quill',
  'chuck-range': 'Range of the chuck',
  stroke: 'Stroke',
  'under-ram': 'Under the ram',
  'head-travel': 'Travel of the head',
  'table-travel': 'Travel of the table',
  'on-table': 'On the table',
  'travel-x': 'Long travel',
  'travel-y': 'Cross travel',
  'travel-z': 'Upright travel',
  'in-vise': 'In the vise',
  'under-wheel': 'Under the wheel',
  'saw-height': 'Under the saw’s guide',
  'on-plate': 'On the surface plate',
};
