import { isNameProblem } from '../../name-problem.ts';
import { definePartRule } from '../../rule.ts';
import { textProblemWords } from '../../text-problem-words.ts';

export default definePartRule({
  id: 'value-unreadable',
  title: 'Value that cannot be worked out',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions'],
  messages: { text: '{name} of {part} reads "{text}": {what}' },
  remedies: { text: '{remedy}' },

  check: ({ part, dimensions }) =>
    dimensions.flatMap(({ record, resolved }) => {
      if (resolved.problem?.why !== 'text' || isNameProblem(resolved.problem.problem)) return [];
      const { sentence, remedy } = textProblemWords(resolved.problem.problem);
      return [
        {
          message: 'text' as const,
          at: [record.id],
          data: { name: record.name, part: part.name, text: record.value, what: sentence, remedy },
        },
      ];
    }),
});
