import type { PartId } from '../../../shared/base/ids.ts';
import type { Unknown } from '../../../shared/plan/unknown.ts';
import { machineFigure } from '../../../shared/tables/machine-figures.ts';
import type { Scene } from '../view.ts';
import type { UnknownRow } from './models.ts';

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Fields of set-ups and operations as their forms call them. */
const fieldWords: readonly (readonly [matches: RegExp, words: string])[] = [
  [/^line/, 'the line that it turns about or moves along'],
  [/^machine/, 'the machine'],
  [/^holding\/ends/, 'where the jaws close'],
  [/^holding\/diameter/, 'the diameter that is held'],
  [/^holding\/seat/, 'the place that sits against it'],
  [/^holding\/at/, 'where the steady stands'],
  [/^holding\/depth/, 'how deep it sits in the jaws'],
  [/^fixtures\/\d+\/shape/, 'the size of what is fixed to it'],
  [/^fixtures\/\d+\/mass/, 'the mass of what is fixed to it'],
  [/^fixtures/, 'where something is fixed to it'],
  [/^allowance/, 'the stock on it'],
  [/^part/, 'a body of the part that stands'],
  [/^cut\/diameter/, 'the diameter of the cut'],
  [/^cut\/inner/, 'the inner diameter of the cut'],
  [/^cut/, 'where the edge travels'],
  [/^tool\/diameter/, 'the diameter of the tool'],
  [/^tool\/overhang/, 'how far the tool stands out'],
  [/^tool\/pitch/, 'the pitch of the thread'],
  [/^tool\/angle/, 'the angle of the edge'],
  [/^leaves/, 'the stock that it leaves'],
  [/^chosen\/minutes/, 'the minutes that it takes'],
  [/^chosen\/(\w+)/, 'a figure that was chosen'],
  [/^minutes/, 'the minutes to set up'],
];

export const fieldName = (field: string): string =>
  fieldWords.find(([matches]) => matches.test(field))?.[1] ?? lowerFirst(field);

/** What is not known in a sentence, and where it is given. */
export function unknownRow({ index }: Scene, part: PartId, unknown: Unknown): UnknownRow {
  switch (unknown.is) {
    case 'machine':
      return { sentence: 'No machine is said. Choose one in the form.', go: { to: 'field', field: 'machine' } };
    case 'line':
      return {
        sentence: 'The line that it turns about or moves along is not said. Give its two stations in the form.',
        go: { to: 'field', field: 'line' },
      };
    case 'figure': {
      const machine = index.machine(unknown.machine);
      const label = machine && machineFigure(machine.type, unknown.key)?.label;
      return {
        sentence: `${label ?? unknown.key} of ${machine?.name ?? 'a machine that is gone'} is not known.`,
        go: machine && { to: 'machine', machine: machine.id, key: unknown.key },
      };
    }
    case 'written':
      return {
        sentence: `“${unknown.text}” for ${fieldName(unknown.field)} cannot be read. Correct it in the form.`,
        go: { to: 'field', field: unknown.field },
      };
    case 'field':
      return {
        sentence: `Not said: ${fieldName(unknown.field)}.`,
        go: { to: 'field', field: unknown.field },
      };
    case 'station': {
      const station = index.station(unknown.station);
      const of = station && index.part(station.part)?.name;
      return {
        sentence: station
          ? `No dimension ties ${station.name} of ${of} to its datum along ${station.axis}.`
          : 'A station that it hangs on is gone.',
        go: station && { to: 'drawing', part: station.part, subject: station.id },
      };
    }
    case 'dimension': {
      const dimension = index.dimension(unknown.dimension);
      const of = dimension && index.part(dimension.part)?.name;
      return {
        sentence: dimension ? `${dimension.name} of ${of} has no value.` : 'A dimension that it hangs on is gone.',
        go: dimension && { to: 'drawing', part: dimension.part, subject: dimension.id },
      };
    }
    case 'body': {
      const body = index.body(unknown.body);
      return {
        sentence: body ? `${body.name} has no place yet.` : 'A body that it hangs on is gone.',
        go: body && { to: 'drawing', part: body.part, subject: body.id },
      };
    }
    case 'material':
      return {
        sentence:
          unknown.name.trim() === ''
            ? 'Its material is not said.'
            : `Nothing is known of the material “${unknown.name}” for this.`,
        go: { to: 'drawing', part, subject: part },
      };
  }
}

/** Texts that cannot be read, by their field, for under the field. */
export function problemsOf(unknown: readonly Unknown[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    unknown.flatMap((one) =>
      one.is === 'written'
        ? [
            [
              one.field,
              `“${one.text}” cannot be read here. Write a length with its unit, such as 12 mm or 1/2".`,
            ] as const,
          ]
        : [],
    ),
  );
}
