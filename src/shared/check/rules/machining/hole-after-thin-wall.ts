import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'hole-after-thin-wall',
  title: 'Hole drilled beside a wall that is thin by then',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: ['part', 'bodies', 'operations', 'route'],
  ofSurfaces: true,
  messages: {
    thin: '{drill} of {part} drills {hole} when {cut} has left only {metal} of metal between it and {beside}.',
    open: '{drill} of {part} drills {hole} when {cut} has opened {beside} into its side.',
  },
  remedies: {
    thin: 'Move {drill} up before {cut}: the drill is held all round then, and the wall does not give way.',
    open: 'Move {drill} up before {cut}: a drill that is held on one side only wanders and breaks.',
  },

  check({ part, bodies, operations, route }) {
    const nameOf = partNames({ bodies, operations });
    return route.faults.flatMap((fault): readonly Said<'thin' | 'open'>[] => {
      if (fault.is !== 'order' || fault.constraint.why.is !== 'thin') return [];
      const { first, next, why } = fault.constraint;
      const isOpen = why.metalMm === 0;
      const data = {
        part: part.name,
        drill: nameOf(first),
        cut: nameOf(next),
        hole: nameOf(why.body),
        beside: nameOf(why.beside),
        ...(!isOpen && { metalMm: why.metalMm }),
      };
      return [{ message: isOpen ? 'open' : 'thin', at: [first, next, why.body, why.beside], data }];
    });
  },
});
