import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'operation-ring',
  title: 'Operations that wait for one another',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: ['part', 'operations', 'route'],
  messages: { ring: 'No order of the operations of {part} is possible: {ring}.' },
  remedies: {
    ring: 'Break the ring: locate or hold one of them by something that is there before, or split it in two.',
  },

  check({ part, operations, route }) {
    const nameOf = partNames({ operations });
    return route.faults.flatMap((fault): readonly Said<'ring'>[] => {
      const [start, ...others] = fault.is === 'ring' ? fault.constraints.map(({ first }) => first) : [];
      if (start === undefined) return [];
      const names = [start, ...others, start].map(nameOf);
      return [{ message: 'ring', at: [start, ...others], data: { part: part.name, ring: names.join(' before ') } }];
    });
  },
});
