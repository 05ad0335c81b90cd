import { describe, expect, test } from 'vitest';
import { dimensionId, sketch } from '../../../tests/support/sketch-build.ts';
import type { SizeForm } from '../build/dimension.ts';
import { createDrawing } from './create-drawing.ts';

function resolved(form: SizeForm, value: string, fields: object = {}, settings: object = {}) {
  const build = sketch().settings(settings).part('bed').size('d', form, value, fields).build();
  return createDrawing(build).dimension(dimensionId('d'));
}

describe('limits', () => {
  test('those written stand, in the unit of the value', () => {
    expect(resolved('diameter', '20', { limits: '+0.2/-0.1' }).limits).toEqual({
      lower: 19.9,
      upper: 20.2,
      origin: 'written',
      row: 'as written',
    });
    const inch = resolved('diameter', '1 in', { limits: '±0.005' }).limits!;
    expect(inch.upper).toBeCloseTo(25.4 + 0.127, 12);
  });

  // ISO 2768-1:1989 tables 1 and 2: 20 mm in class m ± 0.2; a radius of 20 mm ± 1; class f ± 0.1.
  test.each([
    ['diameter', '20', {}, {}, 0.2, 'general'],
    ['length', '20', {}, { machinedTolerance: 'f' }, 0.1, 'general'],
    ['radius', '20', {}, {}, 1, 'general'],
    // ISO 8062-3:2007 table 2: DCTG 11, 16 to 25 mm: 3.2 mm in all.
    ['diameter', '20', { finish: 'as cast' }, {}, 1.6, 'casting'],
  ] as const)('%s %s %j %j: ± %d', (form, value, fields, settings, stray, origin) => {
    const { limits } = resolved(form, value, fields, settings);
    expect(limits!.origin).toBe(origin);
    expect(limits!.upper - 20).toBeCloseTo(stray, 12);
    expect(20 - limits!.lower).toBeCloseTo(stray, 12);
  });

  test.each([
    ['diameter', '0.4'],
    ['angle', '30°'],
    ['thread', 'M8'],
    ['count', '4'],
    ['mass', '3 kg'],
    ['temperature', '700 °C'],
    ['length', ''],
  ] as const)('%s %s has none unless they are written', (form, value) => {
    expect(resolved(form, value).limits).toBeUndefined();
  });

  test('limits that cannot be read leave the value standing', () => {
    const { value, limits, limitsProblem } = resolved('diameter', '20', { limits: 'loose' });
    expect(value).toBe(20);
    expect(limits).toBeUndefined();
    expect(limitsProblem).toBeDefined();
  });

  test('unit and tolerance class changed in one step', () => {
    const records = sketch().settings({ lengthUnit: 'in', machinedTolerance: 'f' }).part('bed');
    const build = records.size('d', 'length', '1-1/2"').build();
    const drawing = createDrawing(build);
    const from = build.get('settings:build' as never) as never as { readonly kind: 'settings' };
    const to = { ...from, lengthUnit: 'mm', machinedTolerance: 'v' } as never;
    drawing.update({ added: [], removed: [], updated: [[from as never, to]] });
    // ISO 2768-1:1989 table 1, class v, 30 to 120 mm: ± 1.5.
    expect(drawing.dimension(dimensionId('d')).limits!.upper).toBeCloseTo(38.1 + 1.5, 12);
  });
});
