import { minimumWall } from '../../../tables/minimum-wall.ts';
import { isWhole } from '../../is-whole.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'wall-minimum-unknown',
  title: 'Nothing known of the least wall',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    unknown: '{part} has walls down to {wall}, and how thin {material} runs in sand is not known here.',
  },
  remedies: { unknown: 'Ask whoever sells the metal, or judge by a wall that ran before.' },

  check({ part, bodies, solid }) {
    const [thinnest] = solid?.faces.walls ?? [];
    const material = part.material.trim();
    if (!isWhole(bodies) || part.make !== 'cast' || material === '' || !thinnest || minimumWall(material)) return [];
    return [{ message: 'unknown', at: [part.id], data: { part: part.name, material, wallMm: thinnest.thicknessMm } }];
  },
});
