import { epsilonOf } from '../../../quantity/tolerance.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'zero-distance',
  title: 'Two stations at one place',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions'],
  messages: { zero: '{name} of {part} is zero: {from} and {to} stand at one place.' },
  remedies: {
    zero: 'If they are one face, keep one station; if they are to be in line, write the limits they must keep.',
  },

  check({ part, stations, dimensions }) {
    const names = new Map<string, string>(stations.map(({ id, name }) => [id, name]));
    return dimensions.flatMap(({ record, resolved }) => {
      const { measure } = record;
      if (measure.type !== 'between' || resolved.value === undefined) return [];
      // With limits written it is a requirement (in line within so much), not an oversight.
      if (Math.abs(resolved.value) > epsilonOf.length || resolved.limits?.origin === 'written') return [];
      return [
        {
          message: 'zero' as const,
          at: [record.id],
          data: {
            name: record.name,
            part: part.name,
            from: names.get(measure.from) ?? measure.from,
            to: names.get(measure.to) ?? measure.to,
          },
        },
      ];
    });
  },
});
