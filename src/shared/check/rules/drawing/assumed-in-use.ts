import { figure } from '../../figure.ts';
import { counted } from '../../listing.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'assumed-in-use',
  title: 'Assumed dimension in use',
  department: 'drawing',
  severity: 'caution',
  shuts: ['cut'],
  acceptable: true,
  needs: ['part', 'dimensions', 'axes'],
  messages: {
    places: '{name} of {part} is only assumed to be {value}, and it places {stations}.',
    named: '{name} of {part} is only assumed to be {value}, and it stands in {formulas}.',
    size: '{name} of {part} is only assumed to be {value}.',
  },
  remedies: {
    places: 'Confirm it: measure it or draw it, and mark it so.',
    named: 'Confirm it: measure it or draw it, and mark it so.',
    size: 'Confirm it: measure it or draw it, and mark it so.',
  },

  check({ part, dimensions, axes }) {
    const placedBy = new Map<string, number>();
    for (const { stations } of axes) {
      for (const { path } of stations) for (const id of path) placedBy.set(id, (placedBy.get(id) ?? 0) + 1);
    }
    return dimensions.flatMap(({ record, resolved, namedBy }): readonly Said<'places' | 'named' | 'size'>[] => {
      // One without a value has a finding of its own.
      if (record.source !== 'assumed' || resolved.value === undefined) return [];
      const placed = placedBy.get(record.id) ?? 0;
      const at = [record.id] as const;
      const data = { name: record.name, part: part.name, ...figure('value', resolved.value, resolved.unit) };
      if (placed > 0) {
        return [{ message: 'places', at, data: { ...data, stations: counted(placed, 'station') } }];
      }
      if (namedBy.length > 0) {
        return [{ message: 'named', at, data: { ...data, formulas: counted(namedBy.length, 'formula') } }];
      }
      return record.measure.type === 'size' ? [{ message: 'size', at, data }] : [];
    });
  },
});
