import { expect, test } from 'vitest';
import { everyShape } from '../../../tests/support/sketch-bodies.ts';
import { wordsOfRole } from './body-uses.ts';
import { validateBuild } from './validate-build.ts';

type Loose = Record<string, unknown> & { shape: Record<string, unknown> };

/** The build of every shape with the body of one shape changed, and what is said of it. */
function problemsOf(type: string, change: (body: Loose) => object): readonly string[] {
  const records = everyShape().map((record) =>
    record.kind === 'body' && record.shape.type === type ? change(record as unknown as Loose) : record,
  );
  const validated = validateBuild(records);
  if (validated.ok) return [];
  return validated.problems.map(({ code, field, index, what, remedy }) => {
    expect(index === undefined ? 'body' : (records[index] as { kind: string }).kind).toMatch(/body|solid/);
    expect(`${what}. ${remedy}`).not.toMatch(/undefined|\[object/);
    return `${code} ${field}`;
  });
}

const shape = (change: object) => (body: Loose) => ({ ...body, shape: { ...body.shape, ...change } });

test.each<[string, string, (body: Loose) => object, readonly string[]]>([
  [
    'no such part',
    'block',
    (body) => ({ ...body, part: 'part:none' }),
    [
      'part-missing part',
      ...['x/0', 'x/1', 'y/0', 'y/1', 'z/0', 'z/1'].map((field) => `station-of-other-part shape/${field}`),
    ],
  ],
  ['no such station', 'slot', shape({ ends: ['station:none', 'station:b-Z20'] }), ['station-missing shape/ends/0']],
  ['a station along another axis', 'rib', shape({ at: 'station:b-X0' }), ['station-of-other-axis shape/at']],
  [
    'a centre with its two places in the wrong order',
    'cone',
    shape({ centre: ['station:b-Y20', 'station:b-X30'] }),
    ['station-of-other-axis shape/centre/0', 'station-of-other-axis shape/centre/1'],
  ],
  ['no such dimension', 'slot', shape({ width: 'dimension:none' }), ['dimension-missing shape/width']],
  [
    'a count as a diameter',
    'cone',
    shape({ diameters: ['dimension:b-count-3'] }),
    ['size-does-not-fit shape/diameters/0'],
  ],
  ['a distance as a diameter', 'hole', shape({ diameter: 'dimension:b-X30' }), ['size-does-not-fit shape/diameter']],
  ['a distance as a length', 'rib', shape({ thickness: 'dimension:b-X30' }), []],
  ['a radius as a diameter', 'cone', shape({ diameters: ['dimension:b-radius-3'] }), []],
  [
    'a length as a count, within a repeat',
    'hole',
    (body) => ({
      ...body,
      repeats: [{ type: 'row', axis: 'X', count: 'dimension:b-length-4', pitch: 'dimension:b-length-4' }],
    }),
    ['size-does-not-fit repeats/0/count'],
  ],
  ['no such mesh', 'imported', shape({ solid: 'solid:none' }), ['solid-missing shape/solid']],
  ['a turn that mirrors', 'imported', shape({ turn: ['+X', '+Z', '+Y'] }), ['turn-mirrors shape/turn']],
  ['a proper turn', 'imported', shape({ turn: ['-X', '+Z', '+Y'] }), []],
  ['a hole that adds', 'hole', (body) => ({ ...body, adds: true }), ['hole-adds adds']],
  ['a shape of no kind', 'rib', shape({ type: 'sphere' }), ['field shape/type']],
  ['two corners', 'rib', shape({ corners: [] }), ['field shape/corners']],
  ['a stray field', 'rib', shape({ colour: 'red' }), ['field shape']],
])('%s (%s)', (_name, type, change, problems) => {
  expect(problemsOf(type, change)).toEqual(problems);
});

test('a station of another part, a mesh that is none', () => {
  const records = everyShape().map((record) => {
    if (record.kind === 'solid') return { ...record, triangles: 'AAAA' };
    return record;
  });
  const validated = validateBuild(records);
  expect(!validated.ok && validated.problems).toMatchObject([{ code: 'mesh-unsound', field: 'triangles' }]);
});

test('a record that cannot be read is not held against what points at it', () => {
  const records = everyShape().map((record) =>
    (record.id as string) === 'station:b-X30' ? { ...record, axis: 'W' } : record,
  );
  const validated = validateBuild(records);
  expect(!validated.ok && validated.problems).toMatchObject([{ code: 'field', field: 'axis' }]);
});

test('what can serve in a role, in words', () => {
  expect(wordsOfRole('diameter')).toBe('a diameter, a radius or a thread');
  expect(wordsOfRole('length')).toBe('a length or a distance');
  expect(wordsOfRole('angle')).toBe('an angle');
});
