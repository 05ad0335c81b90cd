import type { PlacedBody } from '../solid/placed.ts';
import type { DimensionFact, PartFacts } from './rule.ts';

/** The names behind the ids of one part's records; of an id that is none of theirs, the id itself. */
export function partNames({
  stations = [],
  dimensions = [],
  bodies = [],
}: Partial<Pick<PartFacts, 'stations' | 'dimensions' | 'bodies'>>): (id: string) => string {
  const names = new Map<string, string>();
  for (const { id, name } of stations) names.set(id, name);
  for (const { record } of [...dimensions, ...bodies] as readonly (DimensionFact | PlacedBody)[]) {
    names.set(record.id, record.name);
  }
  return (id) => names.get(id) ?? id;
}
