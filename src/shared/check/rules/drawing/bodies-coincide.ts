import { coinciding } from '../../../solid/coinciding.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'bodies-coincide',
  title: 'Bodies in one place',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'bodies'],
  messages: {
    twice: '{other} of {part} has the very shape and place of {body}.',
    undone: '{other} of {part} has the very shape and place of {body}: one adds what the other takes away.',
  },
  remedies: {
    twice: 'Remove one of them, or give {other} the stations and sizes that it was meant to have.',
    undone: 'Remove one of them, or give {other} the stations and sizes that it was meant to have.',
  },

  check: ({ part, bodies }) =>
    coinciding(bodies).flatMap(([first, ...others]) =>
      others.flatMap((other): readonly Said<'twice' | 'undone'>[] => {
        if (!first) return [];
        return [
          {
            message: first.record.adds === other.record.adds ? 'twice' : 'undone',
            at: [other.record.id, first.record.id],
            data: { part: part.name, body: first.record.name, other: other.record.name },
          },
        ];
      }),
    ),
});
