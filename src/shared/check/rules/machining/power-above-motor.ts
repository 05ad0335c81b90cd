import { SPINDLE_EFFICIENCY } from '../../../tables/cutting-force.ts';
import { powerWords } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'power-above-motor',
  title: 'More power than the motor has',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: {
    power:
      '{operation} of {part} asks {needs} of the motor of {machine}, which has {has} ({kept} % of it reaches the edge, {source}).',
  },
  remedies: { power: 'Take lighter cuts, a finer feed, a slower speed or a smaller drill first.' },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, machine, warnings }) =>
      warnings.flatMap((warning): readonly Said<'power'>[] => {
        if (warning.is !== 'power' || !machine) return [];
        const data = {
          operation: record.name,
          part: part.name,
          machine: machine.name,
          needs: powerWords(warning.needsKw),
          has: powerWords(warning.hasKw),
          kept: Math.round(SPINDLE_EFFICIENCY.value * 100),
          source: SPINDLE_EFFICIENCY.source,
        };
        return [{ message: 'power', at: [record.id, machine.id], data }];
      }),
    ),
});
