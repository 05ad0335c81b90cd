import { describe, expect, test } from 'vitest';
import { formatLimits, formatNumber, formatQuantity, nearestFraction } from './format.ts';
import type { Kind } from './kind.ts';

test.each<[number, Kind, 'mm' | 'in', string]>([
  [12.7, 'length', 'mm', '12.7 mm'],
  [12.7, 'length', 'in', '0.5 in'],
  [0.1 + 0.2, 'length', 'mm', '0.3 mm'],
  [9.525, 'length', 'in', '0.375 in'],
  [100, 'length', 'mm', '100 mm'],
  [-0.0000015, 'length', 'mm', '-0.0000015 mm'],
  [-0.0000000015, 'length', 'mm', '0 mm'],
  [0.0000009, 'length', 'in', '0 in'],
  [-0.00000004, 'angle', 'mm', '0°'],
  [0.000000004, 'number', 'mm', '0.000000004'],
  [0.00012, 'length', 'mm', '0.00012 mm'],
  [-0, 'length', 'mm', '0 mm'],
  [1e-20, 'length', 'mm', '0 mm'],
  [1e21, 'length', 'mm', '1000000000000000000000 mm'],
  [123456789.123456, 'length', 'mm', '123456789.123 mm'],
  [Number.NaN, 'length', 'mm', '—'],
  [Number.POSITIVE_INFINITY, 'angle', 'mm', '—'],
  [30, 'angle', 'mm', '30°'],
  [30.2555555, 'angle', 'in', '30.256°'],
  [0.45359237, 'mass', 'in', '0.454 kg'],
  [26.850000000000023, 'temperature', 'mm', '26.9 °C'],
  [4, 'number', 'mm', '4'],
  [1 / 3, 'number', 'mm', '0.333333'],
])('%f as %s in %s is %s', (value, kind, unit, text) => {
  expect(formatQuantity(value, kind, { unit })).toBe(text);
});

test('decimals and bare numbers', () => {
  expect(formatQuantity(12.3456, 'length', { unit: 'mm', decimals: 1 })).toBe('12.3 mm');
  expect(formatQuantity(12.3456, 'length', { unit: 'mm', bare: true })).toBe('12.346');
  expect(formatNumber(150, 0)).toBe('150');
});

test('firm decimals leave nothing behind the last', () => {
  const firm = (value: number, unit: 'mm' | 'in' = 'mm') => formatQuantity(value, 'length', { unit, firm: true });
  expect(firm(-0.00012)).toBe('0 mm');
  expect(firm(0.0005)).toBe('0.001 mm');
  expect(firm(-61.2344999)).toBe('-61.234 mm');
  expect(firm(0.00126, 'in')).toBe('0 in');
});

describe('the nearest fraction of an inch', () => {
  test.each<[number, number, string, number]>([
    [9.525, 64, '3/8"', 0],
    [34.925, 64, '1-3/8"', 0],
    [-34.925, 64, '-1-3/8"', 0],
    [50.8, 64, '2"', 0],
    [0, 64, '0"', 0],
    [10, 64, '25/64"', 0.078125],
    [10, 16, '3/8"', 0.475],
    [-0.1, 64, '0"', -0.1],
  ])('%f mm by %i is %s', (mm, denominator, text, residue) => {
    const fraction = nearestFraction(mm, denominator);
    expect(fraction?.text).toBe(text);
    expect(fraction?.residueMm).toBeCloseTo(residue, 12);
  });

  test('there is none of what is no number', () => {
    expect(nearestFraction(Number.NaN)).toBeUndefined();
    expect(nearestFraction(10, 0)).toBeUndefined();
  });
});

test.each<[number, number, string]>([
  [-0.1, 0.1, '±0.1 mm'],
  [0, 0.2, '+0.2/−0 mm'],
  [-0.2, -0.1, '−0.1/−0.2 mm'],
  [0.02, 0.05, '+0.05/+0.02 mm'],
  [0, 0, '±0 mm'],
  [0.1, 0.1, '+0.1/+0.1 mm'],
])('limits %f %f', (minus, plus, text) => {
  expect(formatLimits({ minus, plus }, 'length', { unit: 'mm' })).toBe(text);
});
