import { groupByName } from '../../group-by-name.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'name-clash',
  title: 'One name for two things of a part',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions', 'axes'],
  messages: {
    dimensions: '{count} dimensions of {part} are called "{name}".',
    stations: '{count} stations of {part} along {axis} are called "{name}".',
  },
  remedies: {
    dimensions: 'Rename all but one: a formula that names "{name}" cannot tell which is meant.',
    stations: 'Rename all but one, so that a dimension from "{name}" can be read in one way only.',
  },

  check({ part, stations, dimensions, axes }) {
    const twice = groupByName(
      dimensions.map(({ record }) => record),
      ({ name }) => name,
    ).map(([first, ...rest]) => ({
      message: 'dimensions' as const,
      at: [first.id, ...rest.map(({ id }) => id)] as const,
      data: { count: rest.length + 1, part: part.name, name: first.name },
    }));
    const alike = axes.flatMap(({ axis }) =>
      groupByName(
        stations.filter((station) => station.axis === axis),
        ({ name }) => name,
      ).map(([first, ...rest]) => ({
        message: 'stations' as const,
        at: [first.id, ...rest.map(({ id }) => id)] as const,
        data: { count: rest.length + 1, part: part.name, name: first.name, axis },
      })),
    );
    return [...twice, ...alike];
  },
});
