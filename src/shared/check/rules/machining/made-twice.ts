import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'made-twice',
  title: 'Surface that is made twice',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions', 'bodies', 'operations', 'route'],
  messages: { twice: '{first} takes {what} of {part} to size, and {next} is to make it again.' },
  remedies: { twice: 'Say how much {first} leaves for {next}, or take {what} out of one of the two.' },

  check({ part, stations, dimensions, bodies, operations, route }) {
    const nameOf = partNames({ stations, dimensions, bodies, operations });
    return route.faults.flatMap((fault): readonly Said<'twice'>[] => {
      if (fault.is !== 'made-twice') return [];
      const { first, next, thing } = fault;
      const data = { part: part.name, first: nameOf(first), next: nameOf(next), what: nameOf(thing) };
      return [{ message: 'twice', at: [next, first, thing], data }];
    });
  },
});
