import { unreachable } from '../base/assert.ts';
import type { DimensionId, StationId } from '../base/ids.ts';
import type { BodyProblem, ShapeProblemCode } from '../solid/placed.ts';
import { figureText } from './figure-words.ts';
import type { SheetSubject, Unplaced } from './sheet.ts';

const codeWords: Readonly<Record<ShapeProblemCode, string>> = {
  'outline-crosses': 'its outline crosses itself',
  'radius-too-large': 'a radius does not fit its corner',
  'bore-not-smaller': 'its bore is not smaller than its outside',
  'thread-without-pitch': 'the pitch of its thread is not known',
  'counterbore-not-wider': 'its counterbore is not wider than its hole',
  'counterbore-too-deep': 'its counterbore is as deep as its hole',
  'countersink-not-wider': 'its countersink is not wider than its hole',
  'countersink-too-deep': 'its countersink is as deep as its hole',
  'angle-out-of-range': 'an angle is not between 0° and 180°',
  'count-not-whole': 'a count is not a whole number of at least 1',
  'too-many-copies': 'there would be too many copies of it',
  'size-does-not-fit': 'a dimension measures something that cannot serve there',
  'mesh-inside-out': 'its faces look inwards',
};

/** One sentence that says what is not on the sheet and what it lacks. */
export function unplacedWords(subject: SheetSubject, unplaced: Unplaced): string {
  const stationName = (id: StationId) => subject.stations.find((station) => station.id === id)?.name ?? 'a station';
  const dimensionName = (id: DimensionId) =>
    subject.dimensions.find((dimension) => dimension.id === id)?.name ?? 'a dimension';
  switch (unplaced.why) {
    case 'station-loose': {
      const station = subject.stations.find(({ id }) => id === unplaced.id);
      const axis = station?.axis ?? 'its axis';
      const hasDatum = subject.axes.some((one) => one.axis === station?.axis && one.datum !== undefined);
      return hasDatum
        ? `Station ${stationName(unplaced.id)}: no dimension ties it to the datum along ${axis}.`
        : `Station ${stationName(unplaced.id)}: there is no datum along ${axis} yet.`;
    }
    case 'no-value': {
      const problem = subject.resolved.get(unplaced.id)?.problem;
      const why =
        problem?.why === 'text'
          ? 'its value cannot be read'
          : problem?.why === 'ring'
            ? 'it hangs on itself'
            : problem?.why === 'waiting'
              ? 'it waits for the value of another dimension'
              : 'no value is written';
      return `Dimension ${dimensionName(unplaced.id)}: ${why}.`;
    }
    case 'ends-loose':
      return `Dimension ${dimensionName(unplaced.id)}: ${list(unplaced.stations.map(stationName))} ${unplaced.stations.length > 1 ? 'have' : 'has'} no place yet.`;
    case 'no-body':
      return `Size ${dimensionName(unplaced.id)}${valueIn(subject, unplaced.id)}: no body on this sheet uses it.`;
    case 'no-room':
      return `Dimension ${dimensionName(unplaced.id)}: there is no room for it. Take a larger paper.`;
    case 'body': {
      const body = subject.bodies.find(({ record }) => record.id === unplaced.id);
      const lacks = [...unplaced.stations.map(stationName), ...unplaced.dimensions.map(dimensionName)];
      return `Body ${body?.record.name ?? ''}: ${bodyWords(body?.problem, lacks)}.`;
    }
    default:
      return unreachable(unplaced);
  }
}

/** What the size comes to, so that it is on the sheet although no view shows it. */
function valueIn({ dimensions, resolved, settings }: SheetSubject, id: DimensionId): string {
  const dimension = dimensions.find((one) => one.id === id);
  const known = resolved.get(id);
  return dimension && known ? ` ${figureText(dimension, known, settings.lengthUnit).text}` : '';
}

function bodyWords(problem: BodyProblem | undefined, names: readonly string[]): string {
  if (problem?.why === 'shape')
    return names.length > 0 ? `${codeWords[problem.code]} (${list(names)})` : codeWords[problem.code];
  if (problem?.why === 'no-size') return `it has no size between ${list(names)}`;
  return names.length > 0
    ? `lacks the place or value of ${list(names)}`
    : 'the mesh that it was brought in with is gone';
}

const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
