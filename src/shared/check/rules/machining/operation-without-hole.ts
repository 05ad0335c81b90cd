import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'operation-without-hole',
  title: 'Nothing drilled before it',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: ['part', 'bodies', 'operations', 'route'],
  messages: {
    none: '{operation} of {part} works on {hole}, which nothing drills and no core leaves open.',
  },
  remedies: { none: 'Add an operation that drills {hole} before {operation}, or mark {hole} as cored.' },

  check({ part, bodies, operations, route }) {
    const nameOf = partNames({ bodies, operations });
    return route.faults.flatMap((fault): readonly Said<'none'>[] => {
      if (fault.is !== 'no-hole') return [];
      const data = { part: part.name, operation: nameOf(fault.operation), hole: nameOf(fault.body) };
      return [{ message: 'none', at: [fault.operation, fault.body], data }];
    });
  },
});
