import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'part-without-bodies',
  title: 'Part without bodies',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions', 'bodies'],
  messages: { none: '{part} has dimensions and no body, so it has no solid, no mass and no views.' },
  remedies: { none: 'Draw its bodies on its stations: blocks, cylinders, holes and what else it is made of.' },

  check({ part, dimensions, bodies }) {
    // Of a part without dimensions there is nothing to draw bodies on, which is a finding of its own.
    if (part.make === 'bought' || bodies.length > 0 || dimensions.length === 0) return [];
    return [{ message: 'none', at: [part.id], data: { part: part.name } }];
  },
});
