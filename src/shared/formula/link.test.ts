import { expect, test } from 'vitest';
import type { Kind } from '../quantity/kind.ts';
import { link } from './link.ts';
import { parseFormula } from './parse-formula.ts';
import { runProgram } from './run.ts';

const kindsByName: Readonly<Record<string, Kind>> = {
  bore: 'length',
  stroke: 'length',
  tilt: 'angle',
  teeth: 'number',
  weight: 'mass',
  heat: 'temperature',
};

const linked = (text: string, want: Kind, lengthUnit: 'mm' | 'in' = 'mm') => {
  const formula = parseFormula(text, lengthUnit);
  if (!formula.ok) throw new Error(formula.error.code);
  const kinds = formula.value.references.map(({ name }) => kindsByName[name]!);
  return link(formula.value, kinds, { want });
};

test.each<[string, Kind]>([
  ['bore + stroke', 'length'],
  ['bore * stroke / bore', 'length'],
  ['sqrt(bore * stroke)', 'length'],
  ['sqrt(sqrt(bore^4))', 'length'],
  ['(bore^3)^(1/3)', 'length'],
  ['bore^2 / stroke', 'length'],
  ['bore^-1 * stroke^2', 'length'],
  ['bore / stroke', 'number'],
  ['teeth * 2', 'number'],
  ['bore * sin(tilt)', 'length'],
  ['atan2(bore, stroke)', 'angle'],
  ['asin(bore / stroke) + tilt', 'angle'],
  ['tilt / 2', 'angle'],
  ['bore * tilt / 1 deg', 'length'],
  ['weight * 2 + 30 g', 'mass'],
  ['heat + 20 °C', 'temperature'],
  ['max(bore, stroke, 3 mm)', 'length'],
  ['hypot(bore, stroke)', 'length'],
  ['round(bore, 0.5 mm)', 'length'],
  ['round(teeth / 2)', 'number'],
  ['2 * pi * teeth', 'number'],
  ['2 + 3', 'length'],
  ['2 + 3', 'angle'],
  ['2 + 3', 'mass'],
  // Written tight a fraction with a unit is one value; with spaces the stroke divides.
  ['2/3 mm + bore', 'length'],
  ['2 / 3 mm * bore', 'number'],
  ['bore*2-3/8 in', 'length'],
  ['bore - 1-3/8 in', 'length'],
  ['bore^2/3 in', 'length'],
])('%s comes out as %s', (text, want) => {
  expect(linked(text, want).ok).toBe(true);
});

test.each<[string, Kind, string, string]>([
  ['bore + 5', 'length', 'bare-number', '5'],
  ['5 - bore', 'length', 'bare-number', '5'],
  ['max(0, bore)', 'length', 'bare-number', '0'],
  ['heat + 5', 'temperature', 'bare-number', '5'],
  ['bore + teeth', 'length', 'unlike-sum', 'bore + teeth'],
  ['bore + tilt', 'length', 'unlike-sum', 'bore + tilt'],
  ['bore * bore + stroke', 'length', 'unlike-sum', 'bore * bore + stroke'],
  ['max(bore, tilt)', 'length', 'unlike', 'bore, tilt'],
  ['bore * stroke', 'length', 'wrong-unit', 'bore * stroke'],
  ['bore', 'angle', 'wrong-unit', 'bore'],
  ['teeth * 5', 'length', 'result-without-unit', 'teeth * 5'],
  ['bore / stroke', 'length', 'result-without-unit', 'bore / stroke'],
  ['10 mm / 2 mm', 'length', 'result-without-unit', '10 mm / 2 mm'],
  ['sin(30) * bore', 'length', 'bare-angle', '30'],
  ['sin(teeth) * bore', 'length', 'needs-angle', 'teeth'],
  ['sin(bore) * bore', 'length', 'needs-angle', 'bore'],
  ['asin(bore)', 'angle', 'needs-number', 'bore'],
  ['2 ^ bore', 'length', 'exponent-with-unit', 'bore'],
  ['bore ^ teeth', 'length', 'exponent-not-fixed', 'teeth'],
  ['bore ^ 40', 'length', 'power-too-high', '40'],
  ['bore ^ 0.123', 'length', 'power-too-high', '0.123'],
  ['round(bore)', 'length', 'step-missing', 'bore'],
  ['round(bore, 1)', 'length', 'bare-number', '1'],
])('%s as %s: %s', (text, want, code, at) => {
  const program = linked(text, want);
  if (program.ok) throw new Error('linked');
  expect([program.error.code, text.slice(program.error.start, program.error.end)]).toEqual([code, at]);
});

test('the remedy speaks the unit of the cell', () => {
  const program = linked('bore + 5', 'length', 'in');
  expect(!program.ok && program.error.data).toEqual({ value: 5, unit: 'in', other: 'a length' });
});

test('a formula of bare numbers takes the unit of the cell', () => {
  const run = (text: string, want: Kind, unit: 'mm' | 'in') => {
    const program = linked(text, want, unit);
    return program.ok ? runProgram(program.value, new Float64Array(0)) : program.error.code;
  };
  expect(run('3/8 + 1', 'length', 'mm')).toBe(1.375);
  expect(run('3/8 + 1', 'length', 'in')).toBe(34.925);
  expect(run('3/8 + 1', 'number', 'in')).toBe(1.375);
  expect(run('asin(0.5) + 1 deg', 'angle', 'in')).toBeCloseTo(31, 12);
});
