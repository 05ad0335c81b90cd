import { definePartRule } from '../../rule.ts';
import { textProblemWords } from '../../text-problem-words.ts';

export default definePartRule({
  id: 'limits-unreadable',
  title: 'Limits that cannot be read',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions'],
  messages: { text: 'The limits of {name} of {part} read "{text}": {what}' },
  remedies: { text: '{remedy}' },

  check: ({ part, dimensions }) =>
    dimensions.flatMap(({ record, resolved }) => {
      if (!resolved.limitsProblem) return [];
      const { sentence, remedy } = textProblemWords(resolved.limitsProblem);
      return [
        {
          message: 'text' as const,
          at: [record.id],
          data: { name: record.name, part: part.name, text: record.limits, what: sentence, remedy },
        },
      ];
    }),
});
