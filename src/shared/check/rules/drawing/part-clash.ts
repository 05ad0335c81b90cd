import { groupByName } from '../../group-by-name.ts';
import { listed } from '../../listing.ts';
import { defineBuildRule } from '../../rule.ts';

export default defineBuildRule({
  id: 'part-clash',
  title: 'One name or number for two parts',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['parts'],
  messages: {
    names: '{count} parts are called "{name}".',
    numbers: '{parts} have the same drawing number {number}.',
  },
  remedies: {
    names: 'Rename all but one, or make one part of them with a quantity of {count}.',
    numbers: 'Give each part a drawing number of its own.',
  },

  check({ parts }) {
    const names = groupByName(parts, ({ name }) => name).map(([first, ...rest]) => ({
      message: 'names' as const,
      at: [first.id, ...rest.map(({ id }) => id)] as const,
      data: { count: rest.length + 1, name: first.name },
    }));
    const numbered = parts.filter(({ number }) => number.trim() !== '');
    const numbers = groupByName(numbered, ({ number }) => number).map((group) => ({
      message: 'numbers' as const,
      at: [group[0].id, ...group.slice(1).map(({ id }) => id)] as const,
      data: { parts: listed(group.map(({ name }) => name)), number: group[0].number },
    }));
    return [...names, ...numbers];
  },
});
