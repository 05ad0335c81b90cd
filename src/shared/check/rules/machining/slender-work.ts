import { figures } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'slender-work',
  title: 'Work that gives way',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: {
    slender:
      '{operation} turns {part} where it stands free for {ratio} times its diameter; beyond {limit} it springs away and chatters ({source}).',
  },
  remedies: {
    slender: 'Steady it by a centre in the tailstock or a steady, or hold it shorter and turn it end for end.',
  },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, warnings }) =>
      warnings.flatMap((warning): readonly Said<'slender'>[] => {
        if (warning.is !== 'slender') return [];
        const { value, source } = warning.limit;
        const data = { operation: record.name, part: part.name, ratio: figures(warning.ratio), limit: value, source };
        return [{ message: 'slender', at: [record.id], data }];
      }),
    ),
});
