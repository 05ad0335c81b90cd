import type { BodyId } from '../../../base/ids.ts';
import { isWhole } from '../../is-whole.ts';
import { listed } from '../../listing.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'detached-piece',
  title: 'Part in pieces',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    apart: '{bodies} of {part} touches nothing of the rest: it is a piece by itself.',
    several: '{bodies} of {part} makes {count} pieces that touch nothing of the rest.',
    machined: '{part} comes apart when it is machined: {bodies} is left as a piece by itself.',
    'machined-several': '{part} comes apart when it is machined: {bodies} is left in {count} pieces by themselves.',
  },
  remedies: {
    apart:
      'Let {bodies} reach into the part, or draw it as a part of its own. Bodies that meet along an edge only do not hold.',
    several: 'Let {bodies} reach into the part. Bodies that meet along an edge only do not hold.',
    machined: 'Leave metal between {bodies} and the rest, or check the order of the bodies.',
    'machined-several': 'Leave metal between {bodies} and the rest, or check the order of the bodies.',
  },

  check({ part, bodies, solid }) {
    if (!solid || !isWhole(bodies)) return [];
    const nameOf = partNames({ bodies });
    const { loose } = solid.faces;
    const poured = loose['as cast'].length > 0;
    const pieces = new Map<string, { readonly ids: readonly BodyId[]; count: number }>();
    for (const ids of poured ? loose['as cast'] : loose.finished) {
      const known = pieces.get(ids.join());
      if (known) known.count++;
      else pieces.set(ids.join(), { ids, count: 1 });
    }
    return [...pieces.values()].map(
      ({ ids, count }): Said<'apart' | 'several' | 'machined' | 'machined-several'> => ({
        message: poured ? (count > 1 ? 'several' : 'apart') : count > 1 ? 'machined-several' : 'machined',
        at: [ids[0] ?? part.id, ...ids.slice(1)],
        data: { part: part.name, bodies: listed(ids.map(nameOf)), ...(count > 1 && { count }) },
      }),
    );
  },
});
