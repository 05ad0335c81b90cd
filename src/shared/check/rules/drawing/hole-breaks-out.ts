import { isWhole } from '../../is-whole.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'hole-breaks-out',
  title: 'Hole that breaks out sideways',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    breaks: '{body} of {part}, {diameter} across, cuts into the side of {beside}: its axis is {centre} from that face.',
    copy: 'Copy {copy} of {body} of {part}, {diameter} across, cuts into the side of {beside}: its axis is {centre} from that face.',
  },
  remedies: {
    breaks: 'Move {body} further in, or make it smaller: a drill that is held on one side only wanders.',
    copy: 'Move {body} further in, or make it smaller: a drill that is held on one side only wanders.',
  },

  check({ part, bodies, solid }) {
    if (!isWhole(bodies)) return [];
    const nameOf = partNames({ bodies });
    const copies = new Map<string, number>(bodies.map(({ record, moves }) => [record.id, moves.length]));
    return (solid?.faces.holes ?? [])
      .filter(({ metalMm }) => metalMm === 0)
      .map(({ body, copy, beside, diameterMm, centreMm }) => {
        const isOne = (copies.get(body) ?? 1) === 1;
        return {
          message: isOne ? ('breaks' as const) : ('copy' as const),
          at: body === beside ? [body] : [body, beside],
          data: {
            body: nameOf(body),
            part: part.name,
            beside: nameOf(beside),
            diameterMm,
            centreMm,
            ...(!isOne && { copy: copy + 1 }),
          },
        };
      });
  },
});
