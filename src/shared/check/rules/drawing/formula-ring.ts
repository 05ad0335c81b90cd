import { defineBuildRule, type Said } from '../../rule.ts';

export default defineBuildRule({
  id: 'formula-ring',
  title: 'Ring of formulas',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['rings'],
  messages: {
    ring: 'These formulas hang on one another in a ring: {ring}.',
    self: '{ring} hangs on itself.',
  },
  remedies: {
    ring: 'Give one of them a value of its own.',
    self: 'Give it a value that does not name it.',
  },

  check: ({ rings }) =>
    rings.flatMap((ring): readonly Said<'ring' | 'self'>[] => {
      const [first, ...rest] = ring.map(({ dimension }) => dimension.id);
      if (first === undefined) return [];
      const names = ring.map(({ dimension, part }) => `${dimension.name} of ${part.name}`);
      if (rest.length === 0) return [{ message: 'self', at: [first], data: { ring: names.join() } }];
      return [{ message: 'ring', at: [first, ...rest], data: { ring: [...names, names[0]].join(' → ') } }];
    }),
});
