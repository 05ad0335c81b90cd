import { speedWords } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'speed-above-table',
  title: 'Faster than the edge stands',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['settings', 'part', 'operations'],
  messages: {
    fast: '{operation} of {part} runs at {speed}; the table goes to {most} for {metal} with {edge} ({source}).',
  },
  remedies: { fast: 'Run slower, take a better edge, or take it on yourself if your tools have stood it.' },

  check: ({ settings, part, operations }) =>
    operations.flatMap(({ record, metal, warnings }) =>
      warnings.flatMap((warning): readonly Said<'fast'>[] => {
        if (warning.is !== 'faster-than-table') return [];
        const data = {
          operation: record.name,
          part: part.name,
          speed: speedWords(warning.speed, settings.lengthUnit),
          most: speedWords(warning.most, settings.lengthUnit),
          metal: metal?.metal ?? part.material,
          edge: record.tool.edge,
          source: warning.source,
        };
        return [{ message: 'fast', at: [record.id], data }];
      }),
    ),
});
