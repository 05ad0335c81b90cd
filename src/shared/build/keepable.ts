import { schemaOf } from './kinds.ts';
import type { BuildRecord } from './records.ts';
import type { Refusal } from './refusals.ts';

/** What a field may hold, in the words of a refusal: "Write …". */
const expectations: Readonly<Record<string, string>> = {
  name: 'a name of 1 to 120 characters',
  value: 'at most 2000 characters',
  limits: 'at most 200 characters, such as ±0.1',
  source: 'drawn, measured, assumed or derived',
  finish: '"as cast" or "machined"',
  make: 'cast, stock or bought',
  form: 'face, shoulder or centreline',
  axis: 'X, Y or Z',
  sheet: 'at most 60 characters',
  number: 'at most 60 characters',
  material: 'at most 120 characters',
  quantity: 'a whole number from 1 to 10000',
  note: 'at most 20000 characters',
  order: 'a finite number',
  reason: 'a reason of 1 to 2000 characters',
  adds: 'true for a body that adds, false for one that takes away',
  shape: 'a shape whose places are stations and whose sizes are dimensions of the part',
  repeats: 'at most 4 repeats',
  values: 'a density, an expansion, a modulus and a cutting group of a material, each within reason or left out',
  fileName: 'a file name of at most 260 characters',
  unit: 'mm, cm, m, in or ft',
  vertices: 'the places of at most 2 million vertices',
  triangles: 'the corners of at most 5 million triangles',
  type: 'one of the types of machine',
  figures: 'figures of at most 200 characters each',
  bed: 'at most 60 points, from front to back',
  generic: 'true for a generic row, false for a machine of your own',
  machine: 'a machine of the build, or nothing',
  family: 'aluminium, zinc, copper or iron',
  moulding: 'a way of moulding',
  contraction: 'three contractions of at most 200 characters each, such as 1.3 %',
  stockGrade: 'a grade from A to K without I, or nothing',
  stock: 'at most 200 faces, each with its stock',
  sizeStock: 'at most 200 sizes, each with its stock',
  up: '+X, -X, +Y, -Y, +Z or -Z',
  parting: 'a place along one axis',
  prints: 'at most 60 bodies, each with the length of the print at either end',
  lugs: 'at most 40 lugs, each with a name, two ends and two places along each axis across',
  boards: 'at most 30 boards, each with a name, its sizes and how many there are',
  sectionAxis: 'X, Y or Z',
  bow: 'a machine of the build, or nothing',
  flask: 'a machine of the build, or nothing',
  furnace: 'a machine of the build, or nothing',
  crucible: 'a machine of the build, or nothing',
  measured: 'at most 300 lines, each with what was measured',
  cast: 'at most 300 lines, each with what was measured',
  trials: 'at most 60 trials, each with what was tried, whether it fits, and when',
  rule: 'percent and hours of at most 200 characters each',
  weighings: 'at most 500 weighings, each with a moment such as 2026-05-01T18:30:00Z and a mass',
  takenOn: 'a reason of at most 2000 characters',
  castings: 'at most 30 parts, each from 1 to 100 times',
  alloy: 'at most 120 characters',
  gating: 'sizes of at most 200 characters each, and 0 to 60 gates',
  risers: 'at most 40 risers, each with a name',
  inserts: 'at most 40 inserts, each with a name',
  journal: 'a moment such as 2026-05-01T18:30:00Z, figures, a result and at most 30 defects',
  state: '"as cast", "finished" or after an operation',
  allowance: 'at most 200 characters, such as 3 mm',
  fellows: 'at most 20 parts, each with the stations at which it meets the first',
  fixtures: 'at most 40 fixtures, each with a name, two ends and a shape',
  line: 'an axis, and a station along each axis across it',
  headEnd: '"low" or "high"',
  holding: 'a way of holding the work',
  minutes: 'at most 200 characters, such as 20 min',
  process: 'what is done: face, turn, bore, drill, ream, tap, mill or another',
  setup: 'a set-up that holds the part, or nothing',
  makes: 'at most 100 stations, sizes and bodies',
  from: 'at most 30 stations and sizes',
  after: 'at most 30 operations',
  leaves: 'at most 200 characters, such as 0.3 mm',
  cut: 'two places along one axis and a diameter',
  tool: 'an edge, a diameter, an overhang, 1 to 200 teeth and an angle',
  chosen: 'a speed, rpm, feed, depth and minutes of at most 200 characters each',
  castingGrade: 'a whole number from 1 to 16',
  machinedTolerance: 'f, m, c or v',
  lengthUnit: 'mm or in',
};

/** Fields that hold something else in one kind of record than in the others. */
const ownExpectations: Readonly<Partial<Record<BuildRecord['kind'], Readonly<Record<string, string>>>>> = {
  body: { finish: '"as cast", "cored" or "machined"' },
  alloy: {
    figures: 'figures within reason, or leave them out',
    source: 'at most 2000 characters',
  },
  material: { source: 'at most 2000 characters' },
  pour: { after: 'an earlier attempt, or nothing' },
};

/** What may be written in a field, for messages that name it otherwise. */
export const expectedIn = (field: string): string => expectations[field] ?? 'a value that this field can hold';

/** How much of a text a message repeats. */
const SHOWN = 40;

export const shorten = (text: string): string => (text.length > SHOWN ? `${text.slice(0, SHOWN - 1)}…` : text);

/** @returns why the record cannot be kept, naming the first field that cannot; undefined when it can. */
export function whyNotKept(record: BuildRecord): (Refusal & { readonly data: { readonly field: string } }) | undefined {
  const parsed = schemaOf[record.kind].safeParse(record);
  if (parsed.success) return undefined;
  const path = parsed.error.issues[0]?.path ?? [];
  const field = String(path[0] ?? 'record');
  let given: unknown = record;
  for (const step of path) given = (given as Record<PropertyKey, unknown> | undefined)?.[step];
  const shown = typeof given === 'object' ? '' : shorten(String(given ?? ''));
  const expected = ownExpectations[record.kind]?.[field] ?? expectedIn(field);
  return { code: 'field-refused', data: { field, given: shown, expected } };
}
