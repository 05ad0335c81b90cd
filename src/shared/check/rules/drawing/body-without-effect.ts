import { coinciding } from '../../../solid/coinciding.ts';
import { isWhole } from '../../is-whole.ts';
import { definePartRule } from '../../rule.ts';

export default definePartRule({
  id: 'body-without-effect',
  title: 'Body that changes nothing',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    inside: '{part} would be the very same without {body}: it lies wholly within others, or is all taken away again.',
  },
  remedies: { inside: 'Remove {body}, or look at its stations and sizes and at its place in the list.' },

  check({ part, bodies, solid }) {
    const idle = new Set(solid?.idle);
    if (idle.size === 0 || !isWhole(bodies)) return [];
    // Two bodies of the same place and shape are a finding of their own.
    const twins = new Set(coinciding(bodies).flatMap((group) => group.map(({ record }) => record.id)));
    return bodies
      .filter(({ record }) => record.adds && idle.has(record.id) && !twins.has(record.id))
      .map(({ record }) => ({ message: 'inside', at: [record.id], data: { part: part.name, body: record.name } }));
  },
});
