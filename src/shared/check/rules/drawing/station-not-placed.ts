import { listed } from '../../listing.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'station-not-placed',
  title: 'Station not placed',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions', 'axes'],
  messages: {
    apart: 'No dimension ties {stations} of {part} to {others} along {axis}.',
    'no-value': 'Nothing but {dimension}, which has no value, ties {stations} of {part} to {others} along {axis}.',
    'not-worked-out':
      'Nothing but {dimension}, whose value cannot be worked out, ties {stations} of {part} to {others} along {axis}.',
  },
  remedies: {
    apart: 'Dimension {from} to {to}, or any other pair of the two groups.',
    'no-value': 'Write a value for {dimension}, which runs from {from} to {to}.',
    'not-worked-out': 'Mend {dimension}, or what its formula hangs on: the findings there say how.',
  },

  check({ part, stations, dimensions, axes }) {
    const names = new Map<string, string>(stations.map(({ id, name }) => [id, name]));
    for (const { record } of dimensions) names.set(record.id, record.name);
    const nameOf = (id: string): string => names.get(id) ?? id;
    return axes.flatMap(({ axis, groups, ties }) =>
      groups.slice(1).flatMap((group, i): readonly Said<'apart' | 'no-value' | 'not-worked-out'>[] => {
        const tie = ties[i];
        if (!tie) return [];
        const own = group.stations.includes(tie.from) ? tie.from : tie.to;
        const other = own === tie.from ? tie.to : tie.from;
        const others = groups.find(({ stations: ids }) => ids.includes(other));
        const data = {
          stations: listed(group.stations.map(nameOf)),
          others: listed((others?.stations ?? [other]).map(nameOf)),
          part: part.name,
          axis,
          from: nameOf(tie.from),
          to: nameOf(tie.to),
        };
        if (tie.dimension === undefined) return [{ message: 'apart', at: [own, other], data }];
        const problem = dimensions.find(({ record }) => record.id === tie.dimension)?.resolved.problem;
        const message = problem === undefined || problem.why === 'empty' ? 'no-value' : 'not-worked-out';
        return [{ message, at: [tie.dimension, own, other], data: { ...data, dimension: nameOf(tie.dimension) } }];
      }),
    );
  },
});
