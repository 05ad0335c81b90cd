import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'datum-first',
  title: 'Datum that is made late',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'operations', 'route'],
  messages: {
    late: '{next} makes {what} of {part} before {first} makes {datum}, from which it is dimensioned.',
  },
  remedies: {
    late: 'Make {datum} first, or say what {next} is measured from instead; the route can propose an order.',
  },

  check({ part, stations, operations, route }) {
    const nameOf = partNames({ stations, operations });
    return route.faults.flatMap((fault): readonly Said<'late'>[] => {
      if (fault.is !== 'order' || fault.constraint.why.is !== 'datum') return [];
      const { first, next, why } = fault.constraint;
      const data = {
        part: part.name,
        first: nameOf(first),
        next: nameOf(next),
        what: nameOf(why.surface),
        datum: nameOf(why.datum),
      };
      return [{ message: 'late', at: [next, first, why.surface, why.datum], data }];
    });
  },
});
