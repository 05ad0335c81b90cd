import { describe, expect, test } from 'vitest';
import type { Kind } from '../quantity/kind.ts';
import { link } from './link.ts';
import { parseFormula } from './parse-formula.ts';
import { problemAt, runProgram } from './run.ts';

/** Runs a formula; its names are given as `a`, `b`, `c` in order of first mention, all of kind `number` unless said. */
const evaluate = (text: string, operands: readonly number[] = [], kind: Kind = 'number', whole = false) => {
  const formula = parseFormula(text, 'mm');
  if (!formula.ok) throw new Error(formula.error.code);
  const program = link(
    formula.value,
    formula.value.references.map(() => kind),
    { want: kind, whole },
  );
  if (!program.ok) throw new Error(program.error.code);
  const values = Float64Array.from(operands);
  return { value: runProgram(program.value, values), problem: problemAt(program.value, values) };
};

test.each<[string, number]>([
  ['1 + 2 * 3', 7],
  ['(1 + 2) * 3', 9],
  ['10 - 4 - 3', 3],
  ['24 / 4 / 2', 3],
  ['2 ^ 3 ^ 2', 512],
  ['-2 ^ 2', -4],
  ['2 ^ -1', 0.5],
  ['2 * -3', -6],
  ['--3', 3],
  ['-+-3', 3],
  ['2 × 3 · 4 ÷ 6 − 1', 3],
  ['1-3/8', 0.625],
  ['sqrt(2) ^ 2', 2.0000000000000004],
  ['abs(-3)', 3],
  ['min(3, 1, 2)', 1],
  ['max(3; 1; 2)', 3],
  ['max((2,5); 1)', 2.5],
  ['min(7)', 7],
  ['hypot(3, 4)', 5],
  ['hypot(2, 3, 6)', 7],
  ['hypot(-2)', 2],
  ['sin(30 deg)', 0.5],
  ['sin(-30 deg)', -0.5],
  ['sin(210 deg)', -0.5],
  ['sin(-210 deg)', 0.5],
  ['sin(360 deg)', 0],
  ['cos(60 deg)', 0.5],
  ['cos(90 deg)', 0],
  ['cos(180 deg)', -1],
  ['tan(45 deg)', 1],
  ['tan(135 deg)', -1],
  ['tan(-45 deg)', -1],
  ['tan(225 deg)', 1],
  ['round(2.5)', 3],
  ['round(-2.5)', -3],
  ['round(7.3, 0.5)', 7.5],
  ['round(0.35, 0.1) * 10', 4],
  ['floor(2.7)', 2],
  ['floor(-2.2)', -3],
  ['floor(0.3, 0.1) * 10', 3.0000000000000004],
  ['ceil(2.2)', 3],
  ['ceil(0.3, 0.1) * 10', 3.0000000000000004],
  ['PI', Math.PI],
  ['Max(1, 2)', 2],
])('%s is %f', (text, value) => {
  expect(evaluate(text)).toEqual({ value, problem: undefined });
});

test('angles come out in degrees', () => {
  expect(evaluate('asin(1)', [], 'angle').value).toBe(90);
  expect(evaluate('acos(-1)', [], 'angle').value).toBe(180);
  expect(evaluate('atan(1)', [], 'angle').value).toBe(45);
  expect(evaluate('atan2(1, -1)', [], 'angle').value).toBe(135);
  // A hair over one is the noise of a division, not a mistake.
  expect(evaluate('asin(1.0000000000000002)', [], 'angle').value).toBe(90);
});

test('operands are read in order of first mention, each name once', () => {
  expect(evaluate('a - b * A', [10, 3]).value).toBe(-20);
});

test('zero is never negative', () => {
  expect(Object.is(evaluate('-a', [0]).value, 0)).toBe(true);
});

test('counts', () => {
  expect(evaluate('a / 3', [18], 'number', true).value).toBe(6);
  expect(evaluate('0.1 * 3 * 10', [], 'number', true).value).toBe(3);
  expect(evaluate('a / 4', [18], 'number', true)).toEqual({
    value: Number.NaN,
    problem: { code: 'not-whole', start: 0, end: 5, data: { value: 4.5 } },
  });
});

describe('problems of a run', () => {
  test.each<[string, readonly number[], string, string]>([
    ['1 / (a - b)', [2, 2], 'division-by-zero', 'a - b'],
    ['1 / (1 / a)', [0], 'division-by-zero', 'a'],
    ['a ^ -1', [0], 'division-by-zero', 'a ^ -1'],
    ['sqrt(a)', [-1], 'root-of-negative', 'a'],
    ['a ^ 0.5 + 1', [-1], 'root-of-negative', 'a ^ 0.5'],
    ['a * a', [1e200], 'too-large', 'a * a'],
    ['1 / (a * a)', [1e200], 'too-large', 'a * a'],
    ['a * a', [1e7], 'too-large', 'a * a'],
    ['9 ^ 9 ^ 9 + a', [1], 'too-large', '9 ^ 9 ^ 9'],
    ['cos(asin(a))', [1.5], 'outside-one', 'a'],
    ['tan(a * 1 deg)', [90], 'no-tangent', 'a * 1 deg'],
    ['sin(atan2(a, b))', [0, 0], 'no-direction', 'atan2(a, b)'],
    ['round(a, b)', [1, 0], 'step-not-positive', 'b'],
    ['floor(a, b)', [1, -1], 'step-not-positive', 'b'],
    ['min(1, 2 / a)', [0], 'division-by-zero', 'a'],
  ])('%s with %j: %s', (text, operands, code, at) => {
    const { value, problem } = evaluate(text, operands);
    expect(value).toBeNaN();
    expect([problem?.code, text.slice(problem?.start, problem?.end)]).toEqual([code, at]);
  });
});
