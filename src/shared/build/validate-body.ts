import type { Body } from './body.ts';
import { servesAs, usesOf, wordsOfRole } from './body-uses.ts';
import { isProperTurn } from './proper-turn.ts';
import type { BuildRecord, RecordId } from './records.ts';

/** One way in which a body does not fit the build that it stands in. */
export interface BodyFault {
  readonly code:
    | 'part-missing'
    | 'station-missing'
    | 'station-of-other-part'
    | 'station-of-other-axis'
    | 'dimension-missing'
    | 'dimension-of-other-part'
    | 'size-does-not-fit'
    | 'solid-missing'
    | 'turn-mirrors'
    | 'hole-adds';
  /** Field within the record, parts joined by `/`. */
  readonly field: string;
  /** What is wrong, a clause without a full stop. */
  readonly what: string;
  /** What to do, one sentence. */
  readonly remedy: string;
}

/**
 * What of a body does not fit its build: something it names is not there, is another part's or of another axis, or is a
 * size of a form that cannot serve. Whether it is placed and has a size is not asked here: a drawing may be unfinished.
 *
 * @param partial some records could not be read: what is not there is then not held against the body.
 */
export function bodyFaults(
  body: Body,
  get: (id: RecordId) => BuildRecord | undefined,
  partial = false,
): readonly BodyFault[] {
  const faults: BodyFault[] = [];
  const say = (code: BodyFault['code'], field: string, what: string, remedy: string) => {
    faults.push({ code, field, what, remedy });
  };
  const missing = (code: BodyFault['code'], field: string, kind: string, id: string) => {
    if (!partial) say(code, field, `there is no ${kind} ${id}`, `Add that ${kind}, or name one that is there.`);
  };
  const { stations, sizes, solid } = usesOf(body);
  if (get(body.part)?.kind !== 'part') missing('part-missing', 'part', 'part', body.part);
  for (const { station: id, axis, field } of stations) {
    const station = get(id);
    if (station?.kind !== 'station') missing('station-missing', field, 'station', id);
    else if (station.part !== body.part) {
      say(
        'station-of-other-part',
        field,
        `"${station.name}" is a station of another part`,
        'Name a station of the same part.',
      );
    } else if (station.axis !== axis) {
      const what = `"${station.name}" lies along ${station.axis}, and a station along ${axis} is wanted`;
      say('station-of-other-axis', field, what, `Name a station along ${axis}.`);
    }
  }
  for (const { dimension: id, role, field } of sizes) {
    const dimension = get(id);
    if (dimension?.kind !== 'dimension') missing('dimension-missing', field, 'dimension', id);
    else if (dimension.part !== body.part) {
      say(
        'dimension-of-other-part',
        field,
        `"${dimension.name}" is a dimension of another part`,
        'Name a dimension of the same part; its value may be a formula over the other.',
      );
    } else if (!servesAs(dimension.measure, role)) {
      const { measure } = dimension;
      const is = measure.type === 'between' ? 'a distance between stations' : `of the form "${measure.form}"`;
      const wanted = wordsOfRole(role);
      say(
        'size-does-not-fit',
        field,
        `"${dimension.name}" is ${is}, and ${wanted} is wanted`,
        `Name ${wanted} of the same part.`,
      );
    }
  }
  if (solid !== undefined && get(solid)?.kind !== 'solid') missing('solid-missing', 'shape/solid', 'solid', solid);
  const { shape } = body;
  if (shape.type === 'imported' && !isProperTurn(shape.turn)) {
    say(
      'turn-mirrors',
      'shape/turn',
      `${shape.turn.join(', ')} is no turn of the three axes: it would mirror or flatten the solid`,
      'Give each axis once, so that the third points where a right-handed screw from the first to the second goes.',
    );
  }
  if (shape.type === 'hole' && body.adds) {
    say('hole-adds', 'adds', 'a hole always takes away', 'Write "adds": false, or make it a cylinder.');
  }
  return faults;
}
