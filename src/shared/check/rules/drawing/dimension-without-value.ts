import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'dimension-without-value',
  title: 'Dimension without a value',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions'],
  messages: { empty: 'The drawing gives no value for {name} of {part}.' },
  remedies: { empty: 'Write a value for {name}, or remove it if nothing needs it.' },

  check: ({ part, dimensions }) =>
    dimensions
      .filter(({ resolved }) => resolved.problem?.why === 'empty')
      .map(({ record }) => ({ message: 'empty', at: [record.id], data: { name: record.name, part: part.name } })),
});
