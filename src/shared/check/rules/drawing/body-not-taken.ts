import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'body-not-taken',
  title: 'Body that no solid can be made of',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'bodies', 'refused'],
  messages: {
    'no triangles': '{body} of {part} has no faces, and the part is worked out without it.',
    'not closed': 'The faces of {body} of {part} do not close, and the part is worked out without it.',
    'not finite':
      'A corner of {body} of {part} lies at no place that is a number, and the part is worked out without it.',
    'inside out': 'The faces of {body} of {part} look inwards, and the part is worked out without it.',
    'too large': '{body} of {part} has too many faces, and the part is worked out without it.',
    'not taken': 'No solid could be made of {body} of {part}, and the part is worked out without it.',
  },
  remedies: {
    'no triangles': 'Draw {body} anew, or bring its solid in anew.',
    'not closed': 'Bring the solid in anew and let its gaps be mended, or draw {body} anew.',
    'not finite': 'Draw {body} anew, or bring its solid in anew.',
    'inside out': 'Have its maker write the solid again with its faces outwards, and bring it in anew.',
    'too large': 'Have its maker write the solid coarser, and bring it in anew.',
    'not taken': 'Draw {body} in simpler pieces.',
  },

  check({ part, bodies, refused }) {
    const names = new Map<string, string>(bodies.map(({ record }) => [record.id, record.name]));
    return refused.map(({ body, why }) => ({
      message: why,
      at: [body],
      data: { body: names.get(body) ?? body, part: part.name },
    }));
  },
});
