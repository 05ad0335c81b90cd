import type { DimensionId, StationId } from '../../../base/ids.ts';
import type { RecordId } from '../../../build/records.ts';
import { machineFigure } from '../../../tables/machine-figures.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type PartFacts } from '../../rule.ts';

type Missing = PartFacts['operations'][number]['unknown'][number];

/** What is not said of an operation, as its form calls it. */
const fields: Readonly<Record<string, string>> = {
  cut: 'where its cut begins and ends',
  'cut/diameter': 'the diameter, or of flat work the breadth, of its cut',
  'tool/diameter': 'the diameter of its tool',
  'tool/pitch': 'the pitch of its tap',
  allowance: 'the stock that it finds',
  'chosen/minutes': 'its time',
};

export default definePartRule({
  id: 'operation-not-said',
  title: 'Operation that cannot be reckoned',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'dimensions', 'operations'],
  messages: { missing: 'Speed, power or time of {operation} of {part} cannot be told without {what}.' },
  remedies: { missing: 'Say it in the operation, its set-up or the shop, or write the time from experience.' },

  check({ part, stations, dimensions, operations }) {
    const nameOf = partNames({ stations, dimensions });
    return operations.flatMap(({ record, machine, unknown }) => {
      const named: RecordId[] = [];
      const what = unknown.flatMap((one): readonly string[] => {
        const words = wordsOf(one, machine, nameOf);
        if (words === undefined) return [];
        if (one.is === 'station') named.push(one.station);
        if (one.is === 'dimension') named.push(one.dimension);
        return [words];
      });
      if (what.length === 0) return [];
      const data = { operation: record.name, part: part.name, what: [...new Set(what)].join('; ') };
      return [{ message: 'missing' as const, at: [record.id, ...new Set(named)] as const, data }];
    });
  },
});

/** Texts that cannot be read, and a metal that is not known, are findings of their own. */
function wordsOf(
  missing: Missing,
  machine: PartFacts['operations'][number]['machine'],
  nameOf: (id: StationId | DimensionId) => string,
): string | undefined {
  switch (missing.is) {
    case 'station':
      return `the place of ${nameOf(missing.station)}`;
    case 'dimension':
      return `a value of ${nameOf(missing.dimension)}`;
    case 'field':
      return fields[missing.field] ?? missing.field;
    case 'figure': {
      const label = machine && machineFigure(machine.type, missing.key)?.label;
      return label && `the ${label.charAt(0).toLowerCase()}${label.slice(1)} of ${machine.name}`;
    }
    default:
      return undefined;
  }
}
