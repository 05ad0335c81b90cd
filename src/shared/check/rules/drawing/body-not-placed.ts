import { listed } from '../../listing.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'body-not-placed',
  title: 'Body without its place',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions', 'bodies'],
  messages: {
    stations: '{body} of {part} cannot be placed: nothing places {stations}.',
    sizes: '{body} of {part} cannot be sized: {dimensions} has no value.',
    both: '{body} of {part} can be neither placed nor sized: nothing places {stations}, and {dimensions} has no value.',
    mesh: '{body} of {part} has no solid: the one that was brought in for it is gone.',
  },
  remedies: {
    stations: 'Dimension {stations} from the datum, or place {body} by other stations.',
    sizes: 'Write a value for {dimensions}, or size {body} by other dimensions.',
    both: 'Dimension {stations} from the datum, and write a value for {dimensions}.',
    mesh: 'Bring the solid in again, or remove {body}.',
  },

  check({ part, stations, dimensions, bodies }) {
    const nameOf = partNames({ stations, dimensions });
    return bodies.flatMap(({ record, problem }): readonly Said<'stations' | 'sizes' | 'both' | 'mesh'>[] => {
      if (problem?.why !== 'not-placed') return [];
      const places = problem.stations.length > 0;
      const sizes = problem.dimensions.length > 0;
      return [
        {
          message: places ? (sizes ? 'both' : 'stations') : sizes ? 'sizes' : 'mesh',
          at: [record.id, ...problem.stations, ...problem.dimensions],
          data: {
            body: record.name,
            part: part.name,
            ...(places && { stations: listed(problem.stations.map(nameOf)) }),
            ...(sizes && { dimensions: listed(problem.dimensions.map(nameOf)) }),
          },
        },
      ];
    });
  },
});
