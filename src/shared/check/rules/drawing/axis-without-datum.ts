import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'axis-without-datum',
  title: 'Axis without a datum',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'axes'],
  messages: { none: 'Axis {axis} of {part} has no datum to place its stations from.' },
  remedies: { none: 'Make one of its stations the datum: the face or centreline that the part is marked out from.' },

  check: ({ part, axes }) =>
    axes.flatMap(({ axis, datum, groups }) => {
      const [first] = groups;
      if (datum !== undefined || !first) return [];
      return [{ message: 'none' as const, at: [first.origin], data: { axis, part: part.name } }];
    }),
});
