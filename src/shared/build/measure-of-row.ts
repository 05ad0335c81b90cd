import { ok, type Result } from '../base/result.ts';
import { nameKey } from '../formula/name-key.ts';
import type { CommandContext } from './command.ts';
import type { CsvRow } from './csv.ts';
import { type Dimension, type Measure, sizeForms } from './dimension.ts';
import type { PartInHand } from './import-state.ts';
import { shorten } from './keepable.ts';
import { readEnds, sizeFormNamed } from './read-ends.ts';
import { type RowRefusal, refuseRow } from './row-refusal.ts';
import { type Axis, axes, defaultStation, type Station } from './station.ts';

export interface RowMeasure {
  readonly measure: Measure;
  /** Stations that the row names and that are not there yet. */
  readonly stations: readonly Station[];
}

const bothOrSize =
  'Write both stations; for a size leave both empty and write its form, such as diameter, under "axis".';

/** What a row measures: by its stations and axis, or by its form of size, which stands under "axis" (or alone under "from"). */
export function measureOfRow(
  part: PartInHand,
  before: Dimension | undefined,
  row: CsvRow,
  addStations: boolean,
  context: CommandContext,
): Result<RowMeasure, RowRefusal> {
  const axis = axes.find((known) => known === row.axis.toUpperCase());
  const form = sizeFormNamed(row.axis);
  if (row.axis !== '' && !axis && !form) {
    return refuseRow(
      `"${shorten(row.axis)}" is neither an axis nor a form of size.`,
      `Write X, Y or Z for a distance, or one of ${sizeForms.join(', ')} for a size.`,
    );
  }
  if (row.from === '' && row.to === '') return sizeOfRow(part, before, axis, form);
  // As in the tables of the window: a form of size in the place of the first station.
  const alone = row.to === '' && row.axis === '' ? sizeFormNamed(row.from) : undefined;
  if (alone && !part.stations.some((station) => nameKey(station.name) === nameKey(row.from)))
    return sizeOfRow(part, before, undefined, alone);
  if (row.from === '' || row.to === '') {
    return refuseRow('Only one of "from" and "to" is given.', bothOrSize);
  }
  if (form) {
    return refuseRow(
      `A ${form} does not run from one station to another.`,
      'Write X, Y or Z under "axis", or leave "from" and "to" empty.',
    );
  }
  const kept = before && asBefore(part, before, row, axis);
  if (kept) return ok({ measure: kept, stations: [] });
  return axis ? along(part, row, axis, addStations, context) : byNames(part, row);
}

function sizeOfRow(
  part: PartInHand,
  before: Dimension | undefined,
  axis: Axis | undefined,
  form: (typeof sizeForms)[number] | undefined,
): Result<RowMeasure, RowRefusal> {
  if (form) {
    const same = before?.measure.type === 'size' && before.measure.form === form;
    return ok({ measure: same ? before.measure : { type: 'size', form }, stations: [] });
  }
  const { measure } = before ?? { measure: { type: 'size', form: 'length' } as const };
  const isAlong =
    measure.type === 'between' && part.stations.some((station) => station.id === measure.from && station.axis === axis);
  if (axis && !isAlong) {
    return refuseRow('An axis is given, but no stations.', 'Write the stations under "from" and "to".');
  }
  return ok({ measure, stations: [] });
}

/** The measure as it is, where its stations already go by the names of the row. */
function asBefore(part: PartInHand, before: Dimension, row: CsvRow, axis: Axis | undefined): Measure | undefined {
  const { measure } = before;
  if (measure.type !== 'between') return undefined;
  const from = part.stations.find((station) => station.id === measure.from);
  const to = part.stations.find((station) => station.id === measure.to);
  const same =
    from &&
    to &&
    nameKey(from.name) === nameKey(row.from) &&
    nameKey(to.name) === nameKey(row.to) &&
    (axis === undefined || from.axis === axis);
  return same ? measure : undefined;
}

function along(
  part: PartInHand,
  row: CsvRow,
  axis: Axis,
  addStations: boolean,
  context: CommandContext,
): Result<RowMeasure, RowRefusal> {
  if (nameKey(row.from) === nameKey(row.to)) {
    return refuseRow(`It runs from "${shorten(row.from)}" to itself.`, 'Write two different stations.');
  }
  const ofAxis = part.stations.filter((station) => station.axis === axis);
  const added: Station[] = [];
  const ends: Station[] = [];
  for (const name of [row.from, row.to]) {
    const named = ofAxis.filter((station) => nameKey(station.name) === nameKey(name));
    if (named.length > 1) {
      return refuseRow(
        `${named.length} stations along ${axis} are called "${shorten(name)}".`,
        'Rename all but one of them, then import again.',
      );
    }
    const [known] = named;
    if (!known && !addStations) {
      return refuseRow(
        `There is no station "${shorten(name)}" along ${axis}.`,
        'Add the station first, or let the import add stations.',
      );
    }
    const station = known ?? {
      ...defaultStation(context.newId('station'), part.record.id, axis, name, part.nextOrder()),
      datum: ofAxis.length + added.length === 0,
    };
    ends.push(station);
    if (!known) added.push(station);
  }
  return ok({ measure: { type: 'between', from: ends[0]!.id, to: ends[1]!.id }, stations: added });
}

function byNames(part: PartInHand, row: CsvRow): Result<RowMeasure, RowRefusal> {
  const ends = readEnds(part.stations, row.from, row.to, undefined);
  if (ends.ok) return ok({ measure: ends.value, stations: [] });
  switch (ends.error.code) {
    case 'unknown':
      return refuseRow(
        `There is no station "${shorten(ends.error.given)}".`,
        'Write X, Y or Z under "axis", so that the station can be added, or the name of one that is there.',
      );
    case 'ambiguous':
      return refuseRow(`"${shorten(ends.error.given)}" stands on more than one axis.`, 'Write X, Y or Z under "axis".');
    case 'different-axes':
      return refuseRow('The two stations do not lie along the same axis.', 'Write two stations of one axis.');
    case 'same-station':
      return refuseRow(`It runs from "${shorten(row.from)}" to itself.`, 'Write two different stations.');
    case 'one-end':
      return refuseRow('Only one of "from" and "to" is given.', bothOrSize);
  }
}
