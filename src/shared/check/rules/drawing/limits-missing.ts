import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'limits-missing',
  title: 'No limits cover a dimension',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions'],
  messages: {
    general: '{name} of {part} is {valueMm} and has no limits: the general tolerance table has no row for it.',
  },
  remedies: { general: 'Write its limits; until then chains count it as exact.' },

  check: ({ part, dimensions }) =>
    dimensions.flatMap(({ record, resolved }) => {
      const { measure } = record;
      const isThread = measure.type === 'size' && measure.form === 'thread';
      if (resolved.unit !== 'length' || isThread || resolved.limits || resolved.limitsProblem) return [];
      // Zero has its own rule, and what is not above zero where it must be is no size at all.
      if (!resolved.value || (measure.type === 'size' && resolved.value < 0)) return [];
      return [
        {
          message: 'general' as const,
          at: [record.id],
          data: { name: record.name, part: part.name, valueMm: resolved.value },
        },
      ];
    }),
});
