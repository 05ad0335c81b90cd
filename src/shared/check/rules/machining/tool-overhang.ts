import { figures } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

type Message = 'bar' | 'cutter' | 'shank';

export default definePartRule({
  id: 'tool-overhang',
  title: 'Tool that stands out too far',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: {
    bar: 'The bar of {operation} of {part} stands out {ratio} times its diameter; beyond {limit} it chatters ({source}).',
    cutter:
      'The cutter of {operation} of {part} stands out {ratio} times its diameter; beyond {limit} it chatters ({source}).',
    shank:
      'The tool of {operation} of {part} stands out {ratio} times the width of its shank; beyond {limit} it chatters ({source}).',
  },
  remedies: {
    bar: 'Take a thicker bar, bore from both ends or with a bar between centres, or go slower and lighter.',
    cutter: 'Take a thicker or shorter cutter, or go slower and lighter.',
    shank: 'Set the tool further back in its block, or take a stouter one.',
  },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, warnings }) =>
      warnings.flatMap((warning): readonly Said<Message>[] => {
        if (warning.is !== 'overhang') return [];
        const message = record.process === 'bore' ? 'bar' : record.process === 'mill' ? 'cutter' : 'shank';
        const { value, source } = warning.limit;
        const data = { operation: record.name, part: part.name, ratio: figures(warning.ratio), limit: value, source };
        return [{ message, at: [record.id], data }];
      }),
    ),
});
