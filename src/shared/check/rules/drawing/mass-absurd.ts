import { massLimits } from '../../../tables/mass-limits.ts';
import { isWhole } from '../../is-whole.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'mass-absurd',
  title: 'Mass beyond belief',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part', 'material', 'bodies', 'solid'],
  messages: {
    heavy: '{part} comes to {mass} of {material}, more than {most} ({limit}, common practice).',
    light: '{part} comes to {mass} of {material}, less than anything that is made so ({limit}, common practice).',
  },
  remedies: {
    heavy: 'Look at its largest dimensions: their unit, and where the point stands. It measures {x} by {y} by {z}.',
    light: 'Look at its dimensions: their unit, and where the point stands. It measures {x} by {y} by {z}.',
  },

  check({ part, material, bodies, solid }) {
    const density = material?.densityKgM3;
    if (part.make === 'bought' || !isWhole(bodies) || !solid || !material || density === undefined) return [];
    const { leastKg, mostKg, most } = massLimits(part.make);
    const { volumeMm3, boxMin, boxMax } = part.make === 'cast' ? solid.asCast : solid.finished;
    const massKg = (volumeMm3 * density) / 1e9;
    if (massKg >= leastKg && massKg <= mostKg) return [];
    const [xMm, yMm, zMm] = [0, 1, 2].map((k) => boxMax[k]! - boxMin[k]!) as [number, number, number];
    const data = { part: part.name, material: material.name, massKg, xMm, yMm, zMm };
    return [
      massKg > mostKg
        ? ({ message: 'heavy', at: [part.id], data: { ...data, most, limitKg: mostKg } } satisfies Said<'heavy'>)
        : ({ message: 'light', at: [part.id], data: { ...data, limitKg: leastKg } } satisfies Said<'light'>),
    ];
  },
});
