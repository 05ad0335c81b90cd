import { partNames } from '../../part-names.ts';
import { definePartRule } from '../../rule.ts';

/** Of a part whose route is begun: before that nothing is missing from it. */
export default definePartRule({
  id: 'not-machined',
  title: 'Machined body that no operation makes',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'bodies', 'route'],
  messages: { unmade: '{body} of {part} is machined, and no operation of its route makes it.' },
  remedies: { unmade: 'Add it to what an operation makes, or mark it as cast or cored.' },

  check({ part, bodies, route }) {
    const nameOf = partNames({ bodies });
    return route.unmade.map((id) => ({
      message: 'unmade' as const,
      at: [id] as const,
      data: { body: nameOf(id), part: part.name },
    }));
  },
});
