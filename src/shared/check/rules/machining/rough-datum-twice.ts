import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

/** Common practice, no source: a casting is located by a rough surface once, to make the surfaces that locate it from then on. */
export default definePartRule({
  id: 'rough-datum-twice',
  title: 'Rough surface that locates twice',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions', 'operations', 'route'],
  messages: {
    twice: '{operations} of {part} are located by {what} in set-ups of their own, and nothing makes it true.',
  },
  remedies: {
    twice:
      'Use {what} once, to make the surfaces that locate the part from then on; a rough one never lies twice alike (common practice).',
  },

  check({ part, stations, dimensions, operations, route }) {
    const nameOf = partNames({ stations, dimensions, operations });
    return route.faults.flatMap((fault): readonly Said<'twice'>[] => {
      if (fault.is !== 'rough-twice') return [];
      const names = fault.operations.map(nameOf);
      const listed = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
      const data = { part: part.name, operations: listed, what: nameOf(fault.surface) };
      return [{ message: 'twice', at: [fault.surface, ...fault.operations], data }];
    });
  },
});
