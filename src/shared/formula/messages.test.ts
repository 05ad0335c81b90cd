import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Kind, TextProblem } from '../quantity/kind.ts';
import { quantityMessages } from '../quantity/messages.ts';
import { parseLimits } from '../quantity/parse-limits.ts';
import { link } from './link.ts';
import { describeProblem, fillMessage, formulaMessages } from './messages.ts';
import { parseWritten } from './parse-written.ts';
import { problemAt } from './run.ts';

const messages: Readonly<Record<string, string>> = { ...quantityMessages, ...formulaMessages };

/** What a value in a cell comes to: every name is a length of 0 mm. */
function problemOfValue(
  text: string,
  kind: Kind,
  flags: { thread?: boolean; whole?: boolean } = {},
): TextProblem | undefined {
  const written = parseWritten(text, { kind, lengthUnit: 'mm', ...flags });
  if (!written.ok) return written.error;
  if (written.value.is !== 'formula') return undefined;
  const { formula } = written.value;
  const program = link(
    formula,
    formula.references.map(() => 'length' as const),
    { want: kind, ...flags },
  );
  return program.ok ? problemAt(program.value, new Float64Array(formula.references.length)) : program.error;
}

const limitsProblem = (text: string): TextProblem | undefined => {
  const limits = parseLimits(text, { kind: 'length', unit: 'mm' });
  return limits.ok ? undefined : limits.error;
};

const whole = { whole: true };
const thread = { thread: true };

/** One text for every code: a code without one fails below. */
const examples: Readonly<Record<string, TextProblem | undefined>> = {
  thousands: problemOfValue('1,000', 'length'),
  'two-numbers': problemOfValue('12 5', 'length'),
  'zero-denominator': problemOfValue('3/0 in', 'length'),
  'fraction-improper': problemOfValue('1 9/8', 'length'),
  'mixed-needs-unit': problemOfValue('x + 1 3/8', 'length'),
  'ambiguous-fraction': problemOfValue('x / 3/8 in', 'length'),
  'unknown-unit': problemOfValue('5 furlong', 'length'),
  'power-of-unit': problemOfValue('5 mm^2', 'length'),
  sixty: problemOfValue("5° 60'", 'angle'),
  'degrees-not-whole': problemOfValue("5.5° 30'", 'angle'),
  'thread-unreadable': problemOfValue('M8 fine', 'length', thread),
  'thread-without-pitch': problemOfValue('8', 'length', thread),
  'thread-no-coarse': problemOfValue('M13', 'length', thread),
  'thread-pitch': problemOfValue('M8x9', 'length', thread),
  'thread-number': problemOfValue('#7-32', 'length', thread),
  'thread-number-or-inch': problemOfValue('3-20', 'length', thread),
  'thread-series': problemOfValue('1/4-20 UNF', 'length', thread),
  'limits-unreadable': limitsProblem('about 1'),
  'limits-unfinished': limitsProblem('±'),
  'limits-rest': limitsProblem('±1 (2)'),
  'limits-too-long': limitsProblem('1'.repeat(300)),
  'limits-too-large': limitsProblem('±1e300'),
  'limits-wrong-kind': limitsProblem('±1 deg'),
  'one-limit': limitsProblem('+0.2'),
  'sign-missing': limitsProblem('0.1'),
  'class-not-yet': limitsProblem('H7'),
  'too-long': problemOfValue(`x${'+x'.repeat(6000)}`, 'length'),
  'too-deep': problemOfValue('('.repeat(300), 'length'),
  'too-large': problemOfValue('1e300', 'length'),
  unfinished: problemOfValue('x +', 'length'),
  unexpected: problemOfValue('x + )', 'length'),
  'operator-expected': problemOfValue('x # 2', 'length'),
  'mark-apart': problemOfValue('5 "', 'length'),
  'unclosed-bracket': problemOfValue('(x', 'length'),
  'unopened-bracket': problemOfValue('x)', 'length'),
  'unclosed-quote': problemOfValue('"x', 'length'),
  'empty-name': problemOfValue('""', 'length'),
  'stray-comma': problemOfValue('x, x', 'length'),
  'mixed-separators': problemOfValue('max(x, x; x)', 'length'),
  'part-missing': problemOfValue('x of', 'length'),
  'name-needs-quotes': problemOfValue('x y', 'length'),
  'unknown-function': problemOfValue('sqrrt(x)', 'length'),
  'argument-count': problemOfValue('sqrt(x, x)', 'length'),
  'scale-in-formula': problemOfValue('20 °C + 5 K', 'temperature'),
  'wrong-kind': problemOfValue('5 deg', 'length'),
  'wrong-unit': problemOfValue('x * x', 'length'),
  'result-without-unit': problemOfValue('x / x', 'length'),
  'bare-number': problemOfValue('x + 5', 'length'),
  'bare-angle': problemOfValue('x * sin(30)', 'length'),
  'unlike-sum': problemOfValue('x + 5 deg', 'length'),
  unlike: problemOfValue('max(x, 5 deg)', 'length'),
  'needs-angle': problemOfValue('sin(x)', 'length'),
  'needs-number': problemOfValue('asin(x)', 'angle'),
  'exponent-with-unit': problemOfValue('2 ^ x', 'length'),
  'exponent-not-fixed': problemOfValue('x ^ (x / x)', 'length'),
  'power-too-high': problemOfValue('x ^ 90', 'length'),
  'step-missing': problemOfValue('round(x)', 'length'),
  'division-by-zero': problemOfValue('x * 1 mm / x', 'length'),
  'root-of-negative': problemOfValue('sqrt(x - 1 mm) * sqrt(1 mm)', 'length'),
  'outside-one': problemOfValue('asin(2)', 'angle'),
  'no-tangent': problemOfValue('x * tan(90 deg)', 'length'),
  'no-direction': problemOfValue('atan2(x, x)', 'angle'),
  'step-not-positive': problemOfValue('round(x, x)', 'length'),
  'not-whole': problemOfValue('2.5', 'number', whole),
};

describe('every problem has a sentence', () => {
  test.each(Object.keys(messages))('%s', (code) => {
    const problem = examples[code];
    expect(problem?.code).toBe(code);
    const sentence = describeProblem(problem!);
    expect(sentence).toBeDefined();
    expect(sentence).not.toMatch(/[{}!]|\binvalid\b|NaN|undefined/i);
    // What is wrong in one sentence, what to do in another.
    expect(sentence).toMatch(/\. [A-Z“].*[.?]$/);
    expect(problem!.start).toBeGreaterThanOrEqual(0);
    expect(problem!.end).toBeGreaterThan(problem!.start);
  });
});

test('no code in the two rooms is without a sentence', () => {
  const rooms = ['src/shared/quantity', 'src/shared/formula'];
  const codes = new Set<string>();
  for (const room of rooms) {
    for (const file of readdirSync(room).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))) {
      const source = readFileSync(`${room}/${file}`, 'utf8');
      const found = /(?:code: |fail\(|refuse\(|problem\(|problemOf\(formula, |return |\? |: )'([a-z]+(?:-[a-z]+)+)'/g;
      for (const [, code] of source.matchAll(found)) codes.add(code!);
    }
  }
  expect(codes.size).toBeGreaterThan(40);
  expect([...codes].filter((code) => !(code in messages))).toEqual([]);
});

test('the sentence names the value and the remedy', () => {
  expect(describeProblem(examples['bare-number']!)).toBe('5 has no unit, but stands beside a length. Write 5 mm.');
  expect(describeProblem(examples['unknown-function']!)).toMatch(/Is sqrt meant\?$/);
  expect(fillMessage('{a} and {b}', { a: 'x', b: 1 / 3 })).toBe('X and 0.333333');
  expect(describeProblem({ code: 'name-unknown', start: 0, end: 1 })).toBeUndefined();
});
