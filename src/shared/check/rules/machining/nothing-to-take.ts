import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'nothing-to-take',
  title: 'More left than there is',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: { none: '{operation} of {part} is to leave {leaves}, and finds only {finds}.' },
  remedies: { none: 'Correct what it leaves, what the operation before it leaves, or the stock of its set-up.' },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, warnings }) =>
      warnings.flatMap((warning): readonly Said<'none'>[] => {
        if (warning.is !== 'nothing-to-take') return [];
        const { leavesMm, findsMm } = warning;
        return [
          { message: 'none', at: [record.id], data: { operation: record.name, part: part.name, leavesMm, findsMm } },
        ];
      }),
    ),
});
