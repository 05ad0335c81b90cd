import { figure } from '../../figure.ts';
import { definePartRule } from '../../rule.ts';

/**
 * A size that was worked out from others and that no formula names and no body takes. A size that is drawn, measured or assumed says
 * something of the part by itself, and a distance between stations always places or checks one: neither is unused.
 */
export default definePartRule({
  id: 'unused-dimension',
  title: 'Derived size that nothing uses',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions', 'bodies'],
  messages: { unused: '{name} of {part} is worked out to {value}, and nothing uses it.' },
  remedies: { unused: 'Remove it, or mark it as drawn if the part is to be made to it.' },

  check({ part, dimensions, bodies }) {
    const taken = new Set<string>(bodies.flatMap((body) => body.dimensions));
    return dimensions.flatMap(({ record, resolved, namedBy }) => {
      if (record.measure.type !== 'size' || record.source !== 'derived') return [];
      if (namedBy.length > 0 || taken.has(record.id)) return [];
      if (resolved.value === undefined) return [];
      return [
        {
          message: 'unused' as const,
          at: [record.id],
          data: { name: record.name, part: part.name, ...figure('value', resolved.value, resolved.unit) },
        },
      ];
    });
  },
});
