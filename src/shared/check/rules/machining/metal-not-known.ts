import { cuttingMetalRows } from '../../../tables/cutting-metals.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'metal-not-known',
  title: 'Cut without knowing the metal',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: {
    unsaid: 'The material of {part} is not said, so its operations have no speeds, power and times.',
    unknown: 'Nothing tells how {material} is cut, so the operations of {part} have no speeds, power and times.',
    group: 'Of {material} only its group for cutting is known: {part} is reckoned as {metal}, {what}.',
  },
  remedies: {
    unsaid: 'Give {part} its material.',
    unknown: 'Give {material} a group for cutting among the materials of the build, or choose a material of the table.',
    group: 'Choose speeds of your own where yours is easier or harder to cut.',
  },

  check({ part, operations }): readonly Said<'unsaid' | 'unknown' | 'group'>[] {
    const asking = operations.find(({ unknown }) => unknown.some(({ is }) => is === 'material'));
    const material = part.material.trim();
    if (asking) {
      const message = material === '' ? 'unsaid' : 'unknown';
      return [{ message, at: [part.id], data: { part: part.name, ...(material !== '' && { material }) } }];
    }
    const metal = operations.find((one) => one.metal?.by === 'group')?.metal?.metal;
    if (metal === undefined) return [];
    return [
      {
        message: 'group',
        at: [part.id],
        data: { part: part.name, material, metal, what: cuttingMetalRows[metal].what },
      },
    ];
  },
});
