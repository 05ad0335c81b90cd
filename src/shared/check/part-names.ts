import type { PlacedBody } from '../solid/placed.ts';
import type { DimensionFact, PartFacts } from './rule.ts';

/** The names behind the ids of one part's records, set-ups among them as far as operations are done in them; of an id that is none of theirs, the id itself. */
export function partNames({
  stations = [],
  dimensions = [],
  bodies = [],
  operations = [],
}: Partial<Pick<PartFacts, 'stations' | 'dimensions' | 'bodies' | 'operations'>>): (id: string) => string {
  const names = new Map<string, string>();
  for (const { id, name } of stations) names.set(id, name);
  for (const { record } of [...dimensions, ...bodies] as readonly (DimensionFact | PlacedBody)[]) {
    names.set(record.id, record.name);
  }
  for (const { record, setup } of operations) {
    names.set(record.id, record.name);
    if (setup) names.set(setup.id, setup.name);
  }
  return (id) => names.get(id) ?? id;
}
