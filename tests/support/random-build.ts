import fc from 'fast-check';
import type { BuildDiff } from '../../src/shared/build/diff.ts';
import {
  type Dimension,
  defaultDimension,
  finishes,
  type Measure,
  sizeForms,
  sources,
} from '../../src/shared/build/dimension.ts';
import { defaultPart } from '../../src/shared/build/part.ts';
import type { Build, BuildRecord, RecordId } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { defaultStation, stationForms } from '../../src/shared/build/station.ts';
import { dimensionId, partId, stationId } from './sketch-build.ts';

// Few ids, few names, few places in the list: so that names clash, rings close, loops form and orders tie often.
const parts = [0, 1, 2].map((i) => partId(`p${i}`));
const stations = Array.from({ length: 9 }, (_, i) => stationId(`s${i}`));
const dimensions = Array.from({ length: 16 }, (_, i) => dimensionId(`d${i}`));
const dimensionNames = ['a', 'b', 'c', 'd', 'E', 'e', 'f', 'bore', 'wall thickness'];
const partNames = ['col', 'Col', 'bed', 'arm plate'];
const texts = [
  '',
  '5',
  '10',
  '15',
  '20',
  '25',
  '-5',
  '12.7',
  '0',
  '0.25',
  '1-1/2"',
  '3/8',
  '1 in',
  '30°',
  '7 kg',
  '21 °C',
  'M8',
  '4',
  'junk(',
  '1e999',
  'a',
  'a + b',
  '2 * c',
  'd - 3 mm',
  'bore/2',
  'a + 5 mm',
  'b / (c - c)',
  'e',
  'f * 2',
  '"wall thickness" + a',
  'bor',
  'walls',
  'a of col',
  'bore of bed',
  'b of "arm plate" + 1 mm',
  'c of colm',
  'boer of bed',
  'a + a of col',
  'd of col * 2',
  'sqrt(a*a)',
];
const limits = ['', '', '', '±0.1', '+0.2/-0', '-0.1/-0.3', '±5', '±0.005"', 'wide'];

const order = fc.integer({ min: 0, max: 4 });

const part = fc
  .record({ id: fc.constantFrom(...parts), name: fc.constantFrom(...partNames), order })
  .map(({ id, name, order }): BuildRecord => defaultPart(id, name, order));

const station = fc
  .record({
    id: fc.constantFrom(...stations),
    part: fc.constantFrom(...parts.slice(0, 2)),
    axis: fc.constantFrom('X' as const, 'X' as const, 'Z' as const),
    datum: fc.boolean(),
    form: fc.constantFrom(...stationForms),
    order,
  })
  .map(
    ({ id, part, axis, datum, form, order }): BuildRecord => ({
      ...defaultStation(id, part, axis, id, order),
      datum,
      form,
    }),
  );

const measure: fc.Arbitrary<Measure> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc
      .record({ from: fc.constantFrom(...stations), to: fc.constantFrom(...stations) })
      .map(({ from, to }): Measure => ({ type: 'between', from, to })),
  },
  { weight: 1, arbitrary: fc.constantFrom(...sizeForms).map((form): Measure => ({ type: 'size', form })) },
);

const anyDimension = fc
  .record({
    id: fc.constantFrom(...dimensions),
    part: fc.constantFrom(...parts),
    name: fc.constantFrom(...dimensionNames),
    measure,
    value: fc.constantFrom(...texts),
    limits: fc.constantFrom(...limits),
    source: fc.constantFrom(...sources),
    finish: fc.constantFrom(...finishes),
    order,
  })
  .map(
    ({ id, part, name, measure, order, ...rest }): Dimension => ({
      ...defaultDimension(id, part, name, measure, order),
      ...rest,
    }),
  );

const settings = fc
  .record({
    lengthUnit: fc.constantFrom('mm' as const, 'in' as const),
    machinedTolerance: fc.constantFrom('f' as const, 'm' as const, 'v' as const),
    castingGrade: fc.integer({ min: 9, max: 13 }),
  })
  .map((fields): BuildRecord => ({ ...defaultSettings('random'), ...fields }));

/** One wished-for change: the record as it shall be, or gone. */
export interface Wish {
  readonly record: BuildRecord;
  readonly gone: boolean;
}

const wish: fc.Arbitrary<Wish> = fc.record({
  record: fc.oneof(
    { weight: 1, arbitrary: settings },
    { weight: 3, arbitrary: part },
    { weight: 8, arbitrary: station },
    { weight: 16, arbitrary: anyDimension },
  ),
  gone: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
});

/** Records to begin with, and batches of wishes to try one after another. */
export const anyHistory = fc.record({
  start: fc.array(
    wish.map(({ record }) => record),
    { minLength: 10, maxLength: 40 },
  ),
  steps: fc.array(fc.array(wish, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 8 }),
});

export function buildFrom(records: readonly BuildRecord[]): Build {
  const first = defaultSettings('random');
  return new Map<RecordId, BuildRecord>([[first.id, first], ...records.map((record) => [record.id, record] as const)]);
}

/** The diff that fulfils the wishes in a given build; later wishes of one record win. */
export function diffOf(build: Build, wishes: readonly Wish[]): BuildDiff {
  const added: BuildRecord[] = [];
  const removed: BuildRecord[] = [];
  const updated: [BuildRecord, BuildRecord][] = [];
  for (const { record, gone } of new Map(wishes.map((one) => [one.record.id, one])).values()) {
    const now = build.get(record.id);
    if (record.kind === 'settings' || (now && !gone)) updated.push([now!, record]);
    else if (now) removed.push(now);
    else if (!gone) added.push(record);
  }
  return { added, updated, removed };
}
