import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, dimensionId, fact, part, settings, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { outOfScale } from '../../out-of-scale-measure.ts';
import rule from './out-of-scale.ts';

const distance = (name: string, value: number, text?: string) =>
  fact(name, value, { measure: between('a', 'b'), ...(text === undefined ? {} : { text }) });
const honest = [40, 55, 62, 38, 70, 48, 90, 33].map((value, i) => distance(`d${i}`, value));
const facts = (extra: ReturnType<typeof fact>[], lengthUnit: 'mm' | 'in' = 'mm') => ({
  settings: settings({ lengthUnit }),
  part: part('column'),
  dimensions: [...honest, ...extra],
});

testRule(rule, {
  passes: [
    { name: 'neighbours alone', facts: facts([]) },
    {
      name: 'too few neighbours',
      facts: { ...facts([]), dimensions: [...honest.slice(0, 6), distance('wrong', 2.375)] },
    },
    {
      name: 'small steps as mm have them',
      facts: facts([distance('step', 2), distance('relief', 2.5), distance('chamfer', 1)]),
    },
    { name: 'a long bed', facts: facts([distance('bed', 1200)]) },
    { name: 'a size of another sort', facts: facts([fact('pin', 2.375, { measure: size('diameter') })]) },
    {
      name: 'a formula, which was not written in a unit',
      facts: facts([fact('gap', 2.375, { measure: between('a', 'b'), resolved: { isFormula: true } })]),
    },
    {
      name: 'a shaft, whose steps and length honestly differ by a hundred',
      facts: { ...facts([]), dimensions: [3, 5, 12.75, 8, 40, 120, 300, 64, 1.25].map((v, i) => distance(`s${i}`, v)) },
    },
  ],
  finds: [
    {
      name: 'inches written in a build of mm',
      facts: facts([distance('reach', 2.375)]),
      findings: [
        {
          message: 'too-small',
          at: [dimensionId('reach')],
          data: { name: 'reach', part: 'column', text: '2.375', valueMm: 2.375, wouldBeMm: 60.324999999999996 },
        },
      ],
    },
    {
      name: 'mm written in a build of inches',
      facts: facts([distance('reach', 1270, '50')], 'in'),
      findings: [
        {
          message: 'too-large',
          at: [dimensionId('reach')],
          data: { name: 'reach', part: 'column', text: '50', valueMm: 1270, wouldBeMm: 50 },
        },
      ],
    },
  ],
});

test('honest parts, of whole and half millimetres over three decades, raise no alarm', () => {
  const lengths = fc.array(fc.integer({ min: 1, max: 1200 }), { minLength: 8, maxLength: 30 });
  fc.assert(
    fc.property(lengths, (halves) => {
      const dimensions = halves.map((half, i) => distance(`d${i}`, half / 2));
      expect(outOfScale(dimensions, 'mm')).toEqual([]);
    }),
  );
});

test('of parts of one scale, a value typed in inches is found nearly always', () => {
  // Lengths between 30 and 90 mm; the slip is one of them in 1/8 in, read as mm.
  let found = 0;
  const runs = 200;
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 30, max: 90 }), { minLength: 10, maxLength: 20 }),
      fc.integer({ min: 10, max: 27 }),
      (mm, eighths) => {
        const typed = Math.floor(eighths / 2) / 4 + 0.125;
        const slip = distance('slip', typed, typed.toFixed(3));
        found += outOfScale([...mm.map((value, i) => distance(`d${i}`, value)), slip], 'mm').length;
      },
    ),
    { numRuns: runs },
  );
  expect(found / runs).toBeGreaterThan(0.9);
});
