import { expect, test } from 'vitest';
import { unitDoubt } from './unit-doubt.ts';

test.each([
  ['as large as its part', 160, 'mm', 160],
  ['a boss of a large part', 12, 'mm', 160],
  ['a part drawn only in part', 160, 'mm', 60],
  ['nothing drawn, a usual size', 160, 'mm', undefined],
  ['inches that are inches', 6.3, 'in', 160],
] as const)('%s is believed', (_, size, unit, part) => {
  expect(unitDoubt(size, unit, part)).toBeUndefined();
});

test.each([
  ['millimetres taken as inches', 160, 'in', 160, 4064, 'mm'],
  ['millimetres taken as metres', 160, 'm', 160, 160_000, 'mm'],
  ['inches taken as millimetres', 6.3, 'mm', 160, 6.3, 'in'],
  ['metres taken as millimetres', 0.16, 'mm', 160, 0.16, 'm'],
  ['metres taken as millimetres, nothing drawn', 0.1, 'mm', undefined, 0.1, 'in'],
  ['small metres taken as millimetres, nothing drawn', 0.01, 'mm', undefined, 0.01, 'm'],
  ['nothing that any unit makes likely', 1e-9, 'm', 160, 1e-6, undefined],
] as const)('%s is asked about', (_, size, unit, partMm, sizeMm, better) => {
  const doubt = unitDoubt(size, unit, partMm);
  expect(doubt).toMatchObject({ partMm, better });
  expect(doubt?.sizeMm).toBeCloseTo(sizeMm, 9);
});
