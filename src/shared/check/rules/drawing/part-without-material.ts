import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'part-without-material',
  title: 'Part without a material',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part'],
  messages: {
    cast: 'Nothing says what {part} is cast in.',
    stock: 'Nothing says what {part} is cut from.',
  },
  remedies: {
    cast: 'Write its material: the pattern is made larger by what that metal shrinks.',
    stock: 'Write its material.',
  },

  check({ part }) {
    if (part.make === 'bought' || part.material.trim() !== '') return [];
    return [{ message: part.make, at: [part.id], data: { part: part.name } }];
  },
});
