import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'material-unknown-density',
  title: 'Density not known',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'material', 'bodies'],
  messages: {
    unknown: 'Nothing is known of {material}, so {part} has a volume and no mass.',
    density: 'The density of {material} is not known, so {part} has a volume and no mass.',
  },
  remedies: {
    unknown:
      'Give the build a material of that name with its density, or write the name as the table of materials has it.',
    density: 'Give {material} its density: the maker’s, or that of a bar weighed and measured.',
  },

  check({ part, material, bodies }): readonly Said<'unknown' | 'density'>[] {
    const name = part.material.trim();
    if (part.make === 'bought' || name === '' || bodies.length === 0 || material?.densityKgM3 !== undefined) return [];
    return [
      {
        message: material ? 'density' : 'unknown',
        at: [part.id],
        data: { part: part.name, material: material?.name ?? name },
      },
    ];
  },
});
