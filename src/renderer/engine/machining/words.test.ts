import { describe, expect, test } from 'vitest';
import { speedWords, timeWords } from './operation-words.ts';
import { clearanceWords, marginWords, roundedLength } from './rounded-length.ts';
import { fieldName, problemsOf } from './unknown-words.ts';

describe('words of the Machine Shop', () => {
  test.each([
    [0.005, '1 s'],
    [0.3, '18 s'],
    [5.44, '5.4 min'],
    [12.4, '12 min'],
    [59.6, '1 h'],
    [80, '1 h 20 min'],
  ])('%f minutes are %s', (minutes, words) => {
    expect(timeWords(minutes)).toBe(words);
  });

  test('a cutting speed stands in the unit of the build: 1 ft = 0.3048 m exactly', () => {
    expect(speedWords(30.48, 'mm')).toBe('30.5 m/min');
    expect(speedWords(30.48, 'in')).toBe('100 ft/min');
  });

  test.each([
    [5.2649, 'mm', '+5.26 mm'],
    [5.2699, 'mm', '+5.26 mm'],
    [0.3 - 0.1, 'mm', '+0.2 mm'],
    [0, 'mm', '+0 mm'],
    [-2.4621, 'mm', '−2.47 mm'],
    [-2.46, 'mm', '−2.46 mm'],
    [25.4, 'in', '+1 in'],
    [-0.03, 'in', '−0.002 in'],
  ] as const)('a margin of %f mm, told in %s, promises no more: %s', (mm, unit, words) => {
    expect(marginWords(mm, unit)).toBe(words);
    expect(clearanceWords(mm, unit)).toContain(words.slice(1));
  });

  test('sizes are told to the nearest step', () => {
    expect(roundedLength(84.7349, 'mm')).toBe('84.73 mm');
    expect(roundedLength(84.7351, 'mm')).toBe('84.74 mm');
  });

  test('fields are called as their forms call them', () => {
    expect(fieldName('holding/ends/0')).toBe('where the jaws close');
    expect(fieldName('tool/overhang')).toBe('how far the tool stands out');
  });

  test('a text that cannot be read is said at its field', () => {
    const problems = problemsOf([{ is: 'written', field: 'allowance', text: 'a bit' }, { is: 'machine' }]);
    expect(Object.keys(problems)).toEqual(['allowance']);
    expect(problems.allowance).toContain('a bit');
  });
});
