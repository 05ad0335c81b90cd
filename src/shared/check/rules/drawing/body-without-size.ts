import { listed } from '../../listing.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'body-without-size',
  title: 'Body without size',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions', 'bodies'],
  messages: {
    places: '{body} of {part} has no size: {names} stand at one place or on one line.',
    size: '{body} of {part} has no size: {names} is zero or less, or comes to it.',
    outline: '{body} of {part} has no size: its outline, drawn by {names}, encloses nothing.',
  },
  remedies: {
    places: 'Move one of {names}, or draw {body} between other stations.',
    size: 'Give {names} a value above zero.',
    outline: 'Look at {names}: two corners lie on one another, or all of them on one line.',
  },

  check({ part, stations, dimensions, bodies }) {
    const nameOf = partNames({ stations, dimensions });
    return bodies.flatMap(({ record, problem }): readonly Said<'places' | 'size' | 'outline'>[] => {
      if (problem?.why !== 'no-size') return [];
      const sizes = problem.at.filter((id) => id.startsWith('dimension:')).length;
      const message = sizes === 0 ? 'places' : sizes === problem.at.length ? 'size' : 'outline';
      return [
        {
          message,
          at: [record.id, ...new Set(problem.at)],
          data: { body: record.name, part: part.name, names: listed([...new Set(problem.at)].map(nameOf)) },
        },
      ];
    });
  },
});
