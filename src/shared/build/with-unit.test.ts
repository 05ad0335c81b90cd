import { expect, test } from 'vitest';
import type { DimensionId, PartId } from '../base/ids.ts';
import { defaultDimension, type SizeForm } from './dimension.ts';
import { withUnit } from './with-unit.ts';

const written = (value: string, limits = '', form: SizeForm = 'length') => ({
  ...defaultDimension('dimension:d' as DimensionId, 'part:p' as PartId, 'd', { type: 'size', form }, 0),
  value,
  limits,
});

test.each([
  ['a bare number', '62', '±0.1', '62 mm', '±0.1'],
  ['a decimal comma', '12,5', '', '12,5 mm', ''],
  ['a number with its unit', '62 mm', '±0.1', '62 mm', '±0.1'],
  ['inches', '1-3/8"', '±0.01', '1-3/8"', '±0.01'],
  ['a bare fraction is inches anyway', '3/8', '', '3/8', ''],
  ['nought is nought', '0', '', '0', ''],
  ['a formula of bare numbers', '2 * 31', '±0.2', '(2 * 31) * 1 mm', '±0.2 mm'],
  ['a formula with units', '2 * 31 mm', '', '2 * 31 mm', ''],
  ['a formula of names: its limits have no unit of their own', 'bore + 2 mm', '+0.2/-0', 'bore + 2 mm', '+0.2/-0 mm'],
  ['limits with a unit', 'bore', '±5 thou', 'bore', '±5 thou'],
  ['what cannot be read stays', '62 furlong', '', '62 furlong', ''],
  ['nothing written', '', '±0.1', '', '±0.1 mm'],
])('%s stays what it is when the build goes to inches', (_name, value, limits, valueAfter, limitsAfter) => {
  expect(withUnit(written(value, limits), 'mm')).toMatchObject({ value: valueAfter, limits: limitsAfter });
});

test('back from inches as well', () => {
  expect(withUnit(written('2.5', '±0.01'), 'in')).toMatchObject({ value: '2.5 in', limits: '±0.01' });
});

test('angles, counts and threads know no unit of length', () => {
  for (const record of [written('30', '', 'angle'), written('4', '', 'count'), written('M8', '', 'thread')])
    expect(withUnit(record, 'mm')).toEqual(record);
});
