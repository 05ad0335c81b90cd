import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'surface-cut-away',
  title: 'Surface that is gone when it is needed',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions', 'bodies', 'operations', 'route'],
  messages: { gone: '{needs} of {part} is located or held by {what}, which {cuts} has cut away by then with {body}.' },
  remedies: { gone: 'Move {needs} up before {cuts}, or locate and hold it by something that stays.' },

  check({ part, stations, dimensions, bodies, operations, route }) {
    const nameOf = partNames({ stations, dimensions, bodies, operations });
    return route.faults.flatMap((fault): readonly Said<'gone'>[] => {
      if (fault.is !== 'order' || fault.constraint.why.is !== 'gone') return [];
      const { first, next, why } = fault.constraint;
      const data = {
        part: part.name,
        needs: nameOf(first),
        cuts: nameOf(next),
        what: nameOf(why.surface),
        body: nameOf(why.body),
      };
      return [{ message: 'gone', at: [first, next, why.surface, why.body], data }];
    });
  },
});
