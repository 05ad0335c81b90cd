import { coinciding } from '../../../solid/coinciding.ts';
import { copiesInAir } from '../../../solid/copies-in-air.ts';
import { isWhole } from '../../is-whole.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'hole-misses',
  title: 'Hole that takes nothing away',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    air: '{body} of {part} takes nothing away: no body above it in the list reaches to where it is.',
    copies:
      '{count} of the {copies} copies of {body} of {part} take nothing away: no body above it reaches to where they are.',
    nothing: '{body} of {part} takes nothing away that another body does not take as well.',
  },
  remedies: {
    air: 'Look at its stations, and at its place in the list: it must stand below the bodies that it goes into.',
    copies: 'Look at the count, the pitch or circle, and the place of {body}.',
    nothing: 'Remove {body}, or look at its stations and at the bodies that take what it takes.',
  },

  check({ part, bodies, solid }) {
    if (!isWhole(bodies)) return [];
    const inAir = copiesInAir(bodies);
    const idle = new Set(solid?.idle);
    // Two bodies of the same place and shape are a finding of their own.
    const twins = new Set(coinciding(bodies).flatMap((group) => group.map(({ record }) => record.id)));
    return bodies.flatMap(({ record, moves }): readonly Said<'air' | 'copies' | 'nothing'>[] => {
      const count = inAir.get(record.id) ?? 0;
      const said = { at: [record.id] as const, data: { body: record.name, part: part.name } };
      if (record.adds) return [];
      if (count > 0 && count === moves.length) return [{ message: 'air', ...said }];
      if (count > 0) return [{ message: 'copies', at: said.at, data: { ...said.data, count, copies: moves.length } }];
      return idle.has(record.id) && !twins.has(record.id) ? [{ message: 'nothing', ...said }] : [];
    });
  },
});
