import { minimumWall } from '../../../tables/minimum-wall.ts';
import { isWhole } from '../../is-whole.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

/**
 * Round walls are told up to this much thinner than they are, and no casting keeps its walls to it, in mm: walls drawn at
 * the very minimum are right.
 */
const SLACK_MM = 0.1;

export default definePartRule({
  id: 'wall-thin',
  title: 'Wall too thin to run',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    thin: '{part} is only {wall} thick at X {x}, Y {y}, Z {z}, between faces of {bodies}; {metal} needs {least} in sand ({source}).',
    sharp:
      '{part} runs out to a sharp edge at X {x}, Y {y}, Z {z}, between faces of {bodies}; {metal} needs {least} in sand ({source}).',
  },
  remedies: {
    thin: 'Make the wall thicker, cast it solid and machine it, or take it on yourself if it is short and near the gate.',
    sharp: 'Cut the edge off, or round it, so that {least} is left.',
  },

  check({ part, bodies, solid }) {
    const least = part.make === 'cast' ? minimumWall(part.material) : undefined;
    if (!solid || !least || !isWhole(bodies)) return [];
    const nameOf = partNames({ bodies });
    return solid.faces.walls
      .filter(({ thicknessMm }) => thicknessMm < least.leastMm - SLACK_MM)
      .map(({ bodies: [one, other], thicknessMm, at: [xMm, yMm, zMm] }): Said<'thin' | 'sharp'> => {
        const isSharp = thicknessMm === 0;
        return {
          message: isSharp ? 'sharp' : 'thin',
          at: one === other ? [one] : [one, other],
          data: {
            part: part.name,
            bodies: one === other ? nameOf(one) : `${nameOf(one)} and ${nameOf(other)}`,
            metal: least.metal,
            source: least.source,
            leastMm: least.leastMm,
            xMm,
            yMm,
            zMm,
            ...(!isSharp && { wallMm: thicknessMm }),
          },
        };
      });
  },
});
