import type { SizeForm } from '../../../build/dimension.ts';
import { figure } from '../../figure.ts';
import { definePartRule } from '../../rule.ts';

/** Sizes that nothing real has at zero or below. Angles and temperatures may well be so. */
const positive: readonly SizeForm[] = ['diameter', 'radius', 'length', 'thread', 'count', 'mass'];

export default definePartRule({
  id: 'size-not-positive',
  title: 'Size that is not above zero',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions'],
  messages: {
    size: '{name} of {part} is {value}, and a {form} must be more than zero.',
    formula: '{name} of {part} comes to {value}, and a {form} must be more than zero.',
  },
  remedies: {
    size: 'Write a {form} above zero.',
    formula: 'Look at its formula "{text}" and at what that names.',
  },

  check: ({ part, dimensions }) =>
    dimensions.flatMap(({ record, resolved }) => {
      const { measure } = record;
      if (measure.type !== 'size' || !positive.includes(measure.form)) return [];
      if (resolved.value === undefined || resolved.value > 0) return [];
      return [
        {
          message: resolved.isFormula ? ('formula' as const) : ('size' as const),
          at: [record.id],
          data: {
            name: record.name,
            part: part.name,
            form: measure.form,
            text: record.value,
            ...figure('value', resolved.value, resolved.unit),
          },
        },
      ];
    }),
});
