import type { DimensionId } from '../../../base/ids.ts';
import { FIGURE_DIGITS } from '../../finding.ts';
import { listed } from '../../listing.ts';
import { type DimensionFact, definePartRule } from '../../rule.ts';

const rounded = (value: number): string => String(Number(value.toPrecision(FIGURE_DIGITS)));

/** A dimension's value and limits in mm, as text: no sentence shows them, but an acceptance holds for these alone. */
function figuresIn(fact: DimensionFact | undefined): string {
  const { value, limits } = fact?.resolved ?? {};
  if (value === undefined) return '';
  return limits === undefined
    ? rounded(value)
    : `${rounded(value)} (${rounded(limits.lower)} to ${rounded(limits.upper)})`;
}

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
    const facts = new Map<DimensionId, DimensionFact>();
    for (const fact of dimensions) facts.set(fact.record.id, fact);
    return axes.flatMap(({ axis, loops }) =>
      loops.flatMap(({ edges, verdict }) => {
        const ids = edges.map(({ dimension }) => dimension);
        const [first, ...rest] = ids;
        if (verdict !== 'redundant' || first === undefined) return [];
        if (ids.some((id) => facts.get(id)?.record.source === 'derived')) return [];
        const chain = listed(ids.map((id) => facts.get(id)?.record.name ?? id));
        const figures = ids.map((id) => figuresIn(facts.get(id))).join('; ');
        return [{ message: 'closed' as const, at: [first, ...rest], data: { chain, part: part.name, axis, figures } }];
      }),
    );
  },
});
