import { outOfScale } from '../../out-of-scale-measure.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'out-of-scale',
  title: 'Dimension out of scale with its neighbours',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['settings', 'part', 'dimensions'],
  messages: {
    'too-small':
      '{name} of {part} reads "{text}", which is {valueMm}: far below its neighbours, but right among them at {wouldBeMm} if inches are meant.',
    'too-large':
      '{name} of {part} reads "{text}", which is {valueMm}: far above its neighbours, but right among them at {wouldBeMm} if millimetres are meant.',
  },
  remedies: {
    'too-small': 'Write the unit behind the number: "{text} in" or "{text} mm".',
    'too-large': 'Write the value in the unit that is meant.',
  },

  check: ({ settings, part, dimensions }) =>
    outOfScale(dimensions, settings.lengthUnit).map(({ record, valueMm, wouldBeMm, isTooSmall }) => ({
      message: isTooSmall ? ('too-small' as const) : ('too-large' as const),
      at: [record.id],
      data: { name: record.name, part: part.name, text: record.value, valueMm, wouldBeMm },
    })),
});
