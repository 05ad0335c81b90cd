import { expect, test } from 'vitest';
import type { Kind } from './kind.ts';
import { type LimitsOptions, parseLimits } from './parse-limits.ts';

const inMm: LimitsOptions = { kind: 'length', unit: 'mm' };
const inInches: LimitsOptions = { kind: 'length', unit: 'in' };
const of = (kind: Kind): LimitsOptions => ({ kind, unit: 'mm' });

test.each<[string, LimitsOptions, number, number]>([
  ['±0.1', inMm, -0.1, 0.1],
  ['± 0,1', inMm, -0.1, 0.1],
  ['+-0.1', inMm, -0.1, 0.1],
  ['+/-0.1', inMm, -0.1, 0.1],
  ['-+0.1', inMm, -0.1, 0.1],
  ['+0.2/-0', inMm, 0, 0.2],
  ['+0.2/−0', inMm, 0, 0.2],
  ['+0.2/0', inMm, 0, 0.2],
  ['0/-0.1', inMm, -0.1, 0],
  ['0/+0.1', inMm, 0, 0.1],
  ['+0.02/+0.05', inMm, 0.02, 0.05],
  ['+0.05/+0.02', inMm, 0.02, 0.05],
  ['-0.1/-0.2', inMm, -0.2, -0.1],
  ['+0.2 -0.1', inMm, -0.1, 0.2],
  ['+0.2; -0.1', inMm, -0.1, 0.2],
  ['+0.2 mm / -0.1 mm', inMm, -0.1, 0.2],
  ['±0.005', inInches, -0.127, 0.127],
  ['±0.005"', inMm, -0.127, 0.127],
  ['±5 thou', inMm, -0.127, 0.127],
  ['+5/-0 thou', inMm, 0, 0.127],
  ['+0.1 mm/-0', inInches, 0, 0.1],
  ['±1/64"', inMm, -0.396875, 0.396875],
  ['+1/32/-0', inMm, 0, 0.79375],
  ['+1/-2', inMm, -2, 1],
  ['±0', inMm, 0, 0],
  ['±0.5', of('angle'), -0.5, 0.5],
  ["±30'", of('angle'), -0.5, 0.5],
  ["±0°30'", of('angle'), -0.5, 0.5],
  ['±9 °F', of('temperature'), -5, 5],
  ['±5 K', of('temperature'), -5, 5],
  ['±50 g', of('mass'), -0.05, 0.05],
  ['±1', of('number'), -1, 1],
])('%s', (text, options, minus, plus) => {
  const limits = parseLimits(text, options);
  if (!limits.ok) throw new Error(limits.error.code);
  expect(limits.value?.minus).toBeCloseTo(minus, 12);
  expect(limits.value?.plus).toBeCloseTo(plus, 12);
  expect(Object.is(limits.value?.minus, -0) || Object.is(limits.value?.plus, -0)).toBe(false);
});

test('nothing written leaves it to the general tolerance', () => {
  expect(parseLimits('  ', inMm)).toEqual({ ok: true, value: undefined });
});

test.each<[string, LimitsOptions, string, string]>([
  ['H7', inMm, 'class-not-yet', 'H7'],
  [' js6 ', inMm, 'class-not-yet', 'js6'],
  ['H7/g6', inMm, 'class-not-yet', 'H7/g6'],
  ['0.1', inMm, 'sign-missing', '0.1'],
  ['0.2/-0.1', inMm, 'sign-missing', '0.2'],
  ['+0.2', inMm, 'one-limit', '+0.2'],
  ['+1/2', inMm, 'one-limit', '+1/2'],
  ['0', inMm, 'one-limit', '0'],
  ['±', inMm, 'limits-unfinished', '±'],
  ['+0.1/+', inMm, 'limits-unreadable', '+'],
  ['about 0.1', inMm, 'limits-unreadable', 'about 0.1'],
  ['±0.1 (or so)', inMm, 'limits-rest', '(or so)'],
  ['±0.1 or so', inMm, 'unknown-unit', 'or'],
  ['+0.2/-0.1/0', inMm, 'limits-rest', '/0'],
  ['±0.1 deg', inMm, 'limits-wrong-kind', '0.1 deg'],
  ['±0.1', of('angle'), '', ''],
  ['±1,000', inMm, 'thousands', '1,000'],
  ['±5 furlong', inMm, 'unknown-unit', 'furlong'],
  ['±1e300 m', inMm, 'limits-too-large', '1e300 m'],
  [`±${'1'.repeat(300)}`, inMm, 'limits-too-long', '1'.repeat(101)],
])('%s: %s', (text, options, code, at) => {
  const limits = parseLimits(text, options);
  if (code === '') return expect(limits.ok).toBe(true);
  if (limits.ok) throw new Error('read');
  expect([limits.error.code, text.slice(limits.error.start, limits.error.end)]).toEqual([code, at]);
});
