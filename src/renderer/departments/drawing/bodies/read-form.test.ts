import { describe, expect, test } from 'vitest';
import { everyShape } from '../../../../../tests/support/sketch-bodies.ts';
import { idSource, type PartId } from '../../../../shared/base/ids.ts';
import type { Body } from '../../../../shared/build/body.ts';
import { type SizeRole, servesAs, usesOf } from '../../../../shared/build/body-uses.ts';
import { runCommand } from '../../../../shared/build/commands/registry.ts';
import { apply } from '../../../../shared/build/diff.ts';
import { bodiesOf, buildOf, dimensionsOf, stationsOf } from '../../../../shared/build/look-up.ts';
import { defaultPart } from '../../../../shared/build/part.ts';
import type { Build } from '../../../../shared/build/records.ts';
import { defaultSettings } from '../../../../shared/build/settings.ts';
import { createDrawing } from '../../../../shared/drawing/create-drawing.ts';
import { type BodyForm, fieldsOf, formOfBody, type Known, newForm, withoutCorner } from './body-form.ts';
import { draftOf, readPlace, readSize } from './read-form.ts';

const PART = 'part:0000000001' as PartId;
const roles: readonly SizeRole[] = ['diameter', 'radius', 'length', 'width', 'angle', 'count'];

let seed = 7;
const newId = idSource(() => {
  seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
  return seed >>> 16;
});
const context = { newId, now: '2026-01-01T00:00:00.000Z' };

const knownIn = (build: Build, part: PartId): Known => ({
  stations: stationsOf(build, part).map(({ id, name, axis }) => ({ id, name, axis, aside: '' })),
  sizes: dimensionsOf(build, part).map(({ id, name, measure }) => ({
    id,
    name,
    roles: roles.filter((role) => servesAs(measure, role)),
    aside: '',
  })),
});

const empty = (): Build => buildOf([defaultSettings('Forms'), defaultPart(PART, 'bracket', 1)]);

/** The build after the form was accepted. */
function drawn(build: Build, form: BodyForm, part = PART, body?: Body['id']): Build {
  const { command, params } = draftOf(form, part, knownIn(build, part), body);
  const result = runCommand(build, command, params as never, context);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return apply(build, result.value.diff);
}

/** Stations by axis and place, in mm from the datum. */
function placesIn(build: Build): readonly string[] {
  return createDrawing(build)
    .axesOf(PART)
    .flatMap(({ axis, stations }) => stations.map(({ at }) => `${axis}${at}`));
}

const known: Known = {
  stations: [
    { id: 'station:foot' as never, name: 'foot', axis: 'Z', aside: '0 mm' },
    { id: 'station:crown' as never, name: 'Crown Top', axis: 'Z', aside: '62 mm' },
    { id: 'station:left' as never, name: 'left', axis: 'X', aside: '0 mm' },
  ],
  sizes: [{ id: 'dimension:bore' as never, name: 'bore', roles: ['diameter', 'radius', 'width'], aside: '25 mm' }],
};

describe('what a text means', () => {
  test.each([
    ['', { is: 'blank' }],
    ['foot', { is: 'station', id: 'station:foot', name: 'foot' }],
    ['  crown TOP ', { is: 'station', id: 'station:crown', name: 'Crown Top' }],
    ['"Crown Top"', { is: 'station', id: 'station:crown', name: 'Crown Top' }],
    ['62', { is: 'new', name: undefined, value: '62', from: undefined }],
    ['1-3/8" from foot', { is: 'new', name: undefined, value: '1-3/8"', from: { id: 'station:foot', name: 'foot' } }],
    [
      'lip = 5 from crown top',
      { is: 'new', name: 'lip', value: '5', from: { id: 'station:crown', name: 'Crown Top' } },
    ],
    ['lip = bore of base + 2', { is: 'new', name: 'lip', value: 'bore of base + 2', from: undefined }],
    // A station of another axis is not one of this: the text is taken for a value and will be refused as such.
    ['left', { is: 'new', name: undefined, value: 'left', from: undefined }],
    ['5 from left', { is: 'new', name: undefined, value: '5 from left', from: undefined }],
  ])('a place: %s', (text, meaning) => {
    expect(readPlace(text, 'Z', known)).toEqual(meaning);
  });

  test.each([
    ['bore', 'diameter', { is: 'dimension', id: 'dimension:bore', name: 'bore' }],
    ['"bore"', 'diameter', { is: 'dimension', id: 'dimension:bore', name: 'bore' }],
    ['bore', 'angle', { is: 'new', name: undefined, value: 'bore' }],
    ['"bore" + 0.2', 'diameter', { is: 'new', name: undefined, value: '"bore" + 0.2' }],
    ['clearance hole = M8', 'diameter', { is: 'new', name: 'clearance hole', value: 'M8' }],
    ['', 'diameter', { is: 'blank' }],
  ] as const)('a size: %s as %s', (text, role, meaning) => {
    expect(readSize(text, role, known)).toEqual(meaning);
  });
});

describe('a form that is accepted', () => {
  test('a block typed as three lengths makes its stations and dimensions by itself', () => {
    const texts = { 'shape/x/1': '60', 'shape/y/1': '40', 'shape/z/1': '20' };
    const build = drawn(empty(), { ...newForm('block'), name: 'foot', texts });
    expect(dimensionsOf(build, PART).map(({ name, value }) => `${name} ${value}`)).toEqual([
      'foot length 60',
      'foot width 40',
      'foot height 20',
    ]);
    expect(placesIn(build)).toEqual(['X0', 'X60', 'Y0', 'Y40', 'Z0', 'Z20']);
    expect(bodiesOf(build, PART)).toHaveLength(1);
  });

  test('the second end is measured from the first; a named one and one from elsewhere too', () => {
    const texts = {
      'shape/x/0': '10',
      'shape/x/1': '60',
      'shape/y/0': 'flank = 5',
      'shape/y/1': 'rim = 30',
      'shape/z/1': '20',
    };
    const build = drawn(empty(), { ...newForm('block'), name: 'pad', texts });
    expect(placesIn(build)).toEqual(['X0', 'X10', 'X70', 'Y0', 'Y5', 'Y35', 'Z0', 'Z20']);
    expect(stationsOf(build, PART, 'Y').map(({ name }) => name)).toEqual(['Y datum', 'flank', 'rim']);
    const next = drawn(build, {
      ...newForm('cylinder'),
      texts: {
        'shape/ends/0': '2 from pad top',
        'shape/ends/1': '8',
        'shape/centre/0': '30 from pad left',
        'shape/centre/1': 'flank',
        'shape/diameter': '12',
      },
    });
    expect(placesIn(next)).toEqual(expect.arrayContaining(['Z22', 'Z30', 'X40']));
  });

  test('a distance that is written twice is one station', () => {
    const corners = [
      ['0', '0'],
      ['60', '0'],
      ['60', '40'],
      ['0', '40'],
    ];
    const texts: Record<string, string> = { 'shape/ends/1': '15' };
    corners.forEach(([x, y], i) => {
      texts[`shape/corners/${i}/at/0`] = x!;
      texts[`shape/corners/${i}/at/1`] = y!;
    });
    const build = drawn(empty(), { ...newForm('prism'), name: 'plate', texts });
    expect(placesIn(build)).toEqual(['X0', 'X60', 'Y0', 'Y40', 'Z0', 'Z15']);
    const [body] = bodiesOf(build, PART);
    expect(new Set(usesOf(body!).stations.map(({ station }) => station)).size).toBe(6);
  });

  test('what is left blank is made without a value, and never guessed', () => {
    const build = drawn(empty(), { ...newForm('cylinder'), name: 'boss', texts: { 'shape/ends/1': '10' } });
    const values = dimensionsOf(build, PART).map(({ name, value }) => [name, value]);
    expect(values).toContainEqual(['boss diameter', '']);
  });

  test('a bolt circle with a counterbored hole', () => {
    const form: BodyForm = {
      ...newForm('hole'),
      name: 'bolt',
      counterbore: true,
      repeats: [{ type: 'circle', axis: 'Z' }],
      texts: {
        'shape/from': '20',
        'shape/to': '-20',
        'shape/centre/0': '0',
        'shape/centre/1': '0',
        'shape/diameter': 'M6',
        'shape/counterbore/diameter': '11',
        'shape/counterbore/depth': '6.5',
        'repeats/0/centre/0': '0',
        'repeats/0/centre/1': '0',
        'repeats/0/count': '4',
        'repeats/0/circle': '90',
      },
    };
    const build = drawn(empty(), form);
    const [body] = bodiesOf(build, PART);
    expect(body).toMatchObject({
      adds: false,
      finish: 'machined',
      shape: { type: 'hole' },
      repeats: [{ type: 'circle' }],
    });
    expect(body!.repeats[0]).not.toHaveProperty('start');
    const forms = dimensionsOf(build, PART).map(({ name, measure }) => [
      name,
      measure.type === 'size' ? measure.form : '',
    ]);
    expect(forms).toEqual(
      expect.arrayContaining([
        ['bolt diameter', 'thread'],
        ['bolt counterbore depth', 'length'],
        ['bolt count', 'count'],
        ['bolt bolt circle', 'diameter'],
      ]),
    );
  });
});

describe('a body that is there', () => {
  const build = buildOf(everyShape());
  const bodies = [...build.values()].filter((record): record is Body => record.kind === 'body');
  const nameOf = (id: string) => (build.get(id as never) as { readonly name: string }).name;
  const formOf = (body: Body) => {
    const { stations, sizes } = usesOf(body);
    const names = [
      ...stations.map(({ station, field }) => [field, nameOf(station)] as const),
      ...sizes.map(({ dimension, field }) => [field, nameOf(dimension)] as const),
    ];
    return formOfBody(body, Object.fromEntries(names));
  };

  test.each(bodies.map((body) => [body.name, body] as const))(
    'opened and accepted as it is, nothing changes: %s',
    (_, body) => {
      const after = drawn(build, formOf(body), body.part, body.id);
      expect(after.get(body.id)).toEqual(body);
      expect(after.size).toBe(build.size);
    },
  );

  test.each(bodies.map((body) => [body.name, body] as const))('all that it hangs on has its field: %s', (_, body) => {
    const { stations, sizes } = usesOf(body);
    const fields = new Set(fieldsOf(formOf(body)).map(({ field }) => field));
    for (const { field } of [...stations, ...sizes]) expect(fields).toContain(field);
  });

  test('a corner that is taken out takes its texts along; those behind move up', () => {
    const form: BodyForm = {
      ...newForm('prism'),
      texts: {
        'shape/corners/0/at/0': 'a',
        'shape/corners/1/at/0': 'b',
        'shape/corners/2/radius': 'c',
        'shape/ends/0': 'z',
      },
    };
    const { corners, texts } = withoutCorner(form, 1);
    expect(corners).toBe(3);
    expect(texts).toEqual({ 'shape/corners/0/at/0': 'a', 'shape/corners/1/radius': 'c', 'shape/ends/0': 'z' });
  });
});
