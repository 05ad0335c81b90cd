import type { DimensionId } from '../../../base/ids.ts';
import { listed } from '../../listing.ts';
import { definePartRule } from '../../rule.ts';

/**
 * A closed chain that agrees with itself. Where one of its dimensions is marked as derived it is a reference dimension,
 * meant to be there and held by nobody: that is good drawing and says nothing.
 */
export default definePartRule({
  id: 'redundant-dimension',
  title: 'Dimensioned twice',
  department: 'drawing',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions', 'axes'],
  messages: {
    closed: '{chain} of {part} make a closed chain along {axis}: one of them says what the others say already.',
  },
  remedies: {
    closed: 'Mark the one that nobody works to as derived, or remove it, so that no distance has two tolerances.',
  },

  check({ part, dimensions, axes }) {
    const records = new Map<DimensionId, (typeof dimensions)[number]['record']>();
    for (const { record } of dimensions) records.set(record.id, record);
    return axes.flatMap(({ axis, loops }) =>
      loops.flatMap(({ edges, verdict }) => {
        const ids = edges.map(({ dimension }) => dimension);
        const [first, ...rest] = ids;
        if (verdict !== 'redundant' || first === undefined) return [];
        if (ids.some((id) => records.get(id)?.source === 'derived')) return [];
        const chain = listed(ids.map((id) => records.get(id)?.name ?? id));
        return [{ message: 'closed' as const, at: [first, ...rest], data: { chain, part: part.name, axis } }];
      }),
    );
  },
});
