import { readFigures } from '../../../plan/machine-figures-read.ts';
import { machineFigure } from '../../../tables/machine-figures.ts';
import { defineBuildRule } from '../../rule.ts';

/** What cannot be read counts as unknown, and set-ups that need it say so; here is why. */
export default defineBuildRule({
  id: 'machine-figure-unreadable',
  title: 'Figure of a machine that cannot be read',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: false,
  needs: ['settings', 'machines'],
  messages: { figure: '{figure} of {machine}: {problem}' },
  remedies: { figure: 'Correct it among the figures of {machine}; until then it counts as unknown.' },

  check: ({ settings, machines }) =>
    machines.flatMap((machine) => {
      const [first, ...rest] = readFigures(machine, settings.lengthUnit).problems;
      if (!first) return [];
      const figure = machineFigure(machine.type, first.key)?.label ?? 'The outline of the bed';
      const more = rest.length === 0 ? '' : ` (and ${rest.length} more)`;
      const data = { figure, machine: machine.name, problem: `${first.problem}${more}` };
      return [{ message: 'figure' as const, at: [machine.id] as const, data }];
    }),
});
