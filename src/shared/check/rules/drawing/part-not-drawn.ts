import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'part-not-drawn',
  title: 'Part not drawn yet',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions'],
  messages: {
    nothing: '{part} has no station and no dimension.',
    'no-dimensions': '{part} has stations, but no dimension.',
  },
  remedies: {
    nothing: 'Draw it: add its stations and the dimensions between them.',
    'no-dimensions': 'Dimension its stations from their datum.',
  },

  check({ part, stations, dimensions }) {
    if (part.make === 'bought' || dimensions.length > 0) return [];
    const message = stations.length === 0 ? ('nothing' as const) : ('no-dimensions' as const);
    return [{ message, at: [part.id], data: { part: part.name } }];
  },
});
