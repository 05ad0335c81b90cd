import { expect, test } from 'vitest';
import { type Rate, readRate } from './read-rate.ts';

// 1 hp = 550 ft·lbf/s: 550 · 0.3048 m · 4.448 221 615 260 5 N = 745.699 871 582 270 22 W.
test.each<[string, Rate, number]>([
  ['450', 'rpm', 450],
  ['450 rpm', 'rpm', 450],
  ['63 r/min', 'rpm', 63],
  ['90 1/min', 'rpm', 90],
  ['90 min-1', 'rpm', 90],
  ['0.75', 'power', 0.75],
  ['0,75 kW', 'power', 0.75],
  ['750 W', 'power', 0.75],
  ['1 hp', 'power', 0.7456998715822702],
  ['1/2 hp', 'power', 0.3728499357911351],
  ['1-1/2HP', 'power', 1.1185498073734053],
  ['30', 'speed', 30],
  ['30 m/min', 'speed', 30],
  ['100 ft/min', 'speed', 30.48],
  ['100 fpm', 'speed', 30.48],
  ['0.5 m/s', 'speed', 30],
  ['12', 'minutes', 12],
  ['1 h', 'minutes', 60],
  ['1 h 20 min', 'minutes', 80],
  ['1.5 h', 'minutes', 90],
  ['90 s', 'minutes', 1.5],
  ['3 l', 'volume', 3],
  ['750 ml', 'volume', 0.75],
  ['4', 'count', 4],
])('%s as %s is %f', (text, rate, value) => {
  const read = readRate(text, rate);
  expect(read.ok && read.value).toBeCloseTo(value, 12);
});

test('nothing written is nothing said', () => {
  for (const text of ['', '  ']) expect(readRate(text, 'rpm')).toEqual({ ok: true, value: undefined });
});

test.each<[string, Rate, string]>([
  ['fast', 'rpm', 'not-a-number'],
  ['450 kW', 'rpm', 'unknown-unit'],
  ['30 mm', 'speed', 'unknown-unit'],
  ['0', 'rpm', 'not-positive'],
  ['-5', 'rpm', 'not-a-number'],
  ['1/0 hp', 'power', 'not-a-number'],
  ['1 2', 'rpm', 'not-a-number'],
  ['1 h 20 min 5 s 3', 'minutes', 'unknown-unit'],
  ['1,200', 'rpm', 'not-a-number'],
  ['5 constructor', 'rpm', 'unknown-unit'],
])('%s as %s: %s', (text, rate, code) => {
  const read = readRate(text, rate);
  expect(!read.ok && read.error.code).toBe(code);
  expect(!read.ok && read.error.units).not.toBe('');
});
