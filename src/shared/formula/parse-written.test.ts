import { describe, expect, test } from 'vitest';
import type { Kind } from '../quantity/kind.ts';
import { parseWritten } from './parse-written.ts';
import type { WrittenOptions } from './written.ts';

const inMm: WrittenOptions = { kind: 'length', lengthUnit: 'mm' };
const inInches: WrittenOptions = { kind: 'length', lengthUnit: 'in' };
const of = (kind: Kind, extra: Partial<WrittenOptions> = {}): WrittenOptions => ({ kind, lengthUnit: 'mm', ...extra });

const quantity = (text: string, options: WrittenOptions) => {
  const written = parseWritten(text, options);
  if (!written.ok) return written.error.code;
  return written.value.is === 'quantity' ? written.value : written.value.is;
};

const problem = (text: string, options: WrittenOptions) => {
  const written = parseWritten(text, options);
  if (written.ok) return written.value.is;
  const { code, start, end } = written.error;
  return [code, text.slice(start, end)];
};

describe('lengths', () => {
  test.each<[string, number, 'mm' | 'in']>([
    ['12', 12, 'mm'],
    ['12,5', 12.5, 'mm'],
    ['0,125', 0.125, 'mm'],
    [' 12.5 mm ', 12.5, 'mm'],
    ['12.5mm', 12.5, 'mm'],
    ['.5', 0.5, 'mm'],
    ['5.', 5, 'mm'],
    ['1e3', 1000, 'mm'],
    ['1E-2', 0.01, 'mm'],
    ['2.5 cm', 25, 'mm'],
    ['1.2 m', 1200, 'mm'],
    ['5 µm', 0.005, 'mm'],
    ['-4', -4, 'mm'],
    ['− 4', -4, 'mm'],
    ['+4', 4, 'mm'],
    ['-0', 0, 'mm'],
    ['3/8', 9.525, 'in'],
    ['3 / 8', 9.525, 'in'],
    ['1-3/8', 34.925, 'in'],
    ['1 3/8', 34.925, 'in'],
    ['-1-3/8', -34.925, 'in'],
    ['1 3/8"', 34.925, 'in'],
    ['1-3/8 in', 34.925, 'in'],
    ['1½"', 38.1, 'in'],
    ['½', 12.7, 'in'],
    ['62 in.', 1574.8, 'in'],
    ['2″', 50.8, 'in'],
    ['5 thou', 0.127, 'in'],
    ['1 ft', 304.8, 'in'],
    ['12 MM', 12, 'mm'],
  ])('%s is %f mm, written in %s', (text, value, unit) => {
    expect(quantity(text, inMm)).toEqual({ is: 'quantity', value, unit });
  });

  test('a bare number takes the unit of the cell', () => {
    expect(quantity('7', inInches)).toEqual({ is: 'quantity', value: 177.8, unit: 'in' });
    expect(quantity('7 mm', inInches)).toEqual({ is: 'quantity', value: 7, unit: 'mm' });
  });

  test('a zero is never negative', () => {
    const written = parseWritten('-0', inMm);
    expect(written.ok && written.value.is === 'quantity' && Object.is(written.value.value, 0)).toBe(true);
  });
});

test.each<[string, Kind, number]>([
  ['30', 'angle', 30],
  ['30°', 'angle', 30],
  ['30 deg', 'angle', 30],
  ["30°15'", 'angle', 30.25],
  ['30° 15′ 36″', 'angle', 30.26],
  ["30° 36''", 'angle', 30.01],
  ["-30°30'", 'angle', -30.5],
  ["15'", 'angle', 0.25],
  ['22 1/2°', 'angle', 22.5],
  ['180 deg', 'angle', 180],
  ['1.5', 'mass', 1.5],
  ['200 g', 'mass', 0.2],
  ['1 lb', 'mass', 0.45359237],
  ['16 oz', 'mass', 0.45359237],
  ['700', 'temperature', 700],
  ['700 °C', 'temperature', 700],
  ['-40 °F', 'temperature', -40],
  ['212°F', 'temperature', 100],
  ['273.15 K', 'temperature', 0],
  ['6', 'number', 6],
  ['3/8', 'number', 0.375],
  ['1-3/8', 'number', 1.375],
])('%s as %s is %f', (text, kind, value) => {
  expect(quantity(text, of(kind))).toEqual({ is: 'quantity', value, unit: undefined });
});

test('counts are whole', () => {
  expect(quantity('6', of('number', { whole: true }))).toEqual({ is: 'quantity', value: 6, unit: undefined });
  expect(quantity('4/2', of('number', { whole: true }))).toEqual({ is: 'quantity', value: 2, unit: undefined });
  expect(problem(' 6.5', of('number', { whole: true }))).toEqual(['not-whole', '6.5']);
});

test('nothing written', () => {
  expect(quantity('', inMm)).toBe('empty');
  expect(quantity(' \t\u00a0', inMm)).toBe('empty');
});

test.each<[string, WrittenOptions, string, string]>([
  ['1,000', inMm, 'thousands', '1,000'],
  ['12,125', inMm, 'thousands', '12,125'],
  ['1 000', inMm, 'thousands', '1 000'],
  ["1'000", inMm, 'thousands', "1'000"],
  ['1.234,5', inMm, 'thousands', '1.234,5'],
  ['1,234,567.8', inMm, 'thousands', '1,234,567.8'],
  ['12 5', inMm, 'two-numbers', '12 5'],
  ['1.5 2', inMm, 'two-numbers', '1.5 2'],
  ['1 9/8', inMm, 'fraction-improper', '1 9/8'],
  ['3/0 in', inMm, 'zero-denominator', '3/0'],
  ['5 furlong', inMm, 'unknown-unit', 'furlong'],
  ['2 bore', inMm, 'unknown-unit', 'bore'],
  ['5 mm^2', inMm, 'power-of-unit', '5 mm^'],
  ['30 deg', inMm, 'wrong-kind', '30 deg'],
  ['30 mm', of('angle'), 'wrong-kind', '30 mm'],
  ['30', of('length'), 'quantity', ''],
  ["30°60'", of('angle'), 'sixty', "60'"],
  ["30.5° 15'", of('angle'), 'degrees-not-whole', " 15'"],
  ['1e400', inMm, 'too-large', '1e400'],
  ['1e13', inMm, 'too-large', '1e13'],
  ['5 "', inMm, 'mark-apart', ' "'],
  ['bore + 1 3/8', inMm, 'mixed-needs-unit', '1 3/8'],
  ['bore/3/8 in', inMm, 'ambiguous-fraction', '3/8'],
  ['20 °C + 5 K', of('temperature'), 'scale-in-formula', '5 K'],
  ['bore *', inMm, 'unfinished', ' *'],
  ['bore + * 2', inMm, 'unexpected', '*'],
  ['(bore', inMm, 'unclosed-bracket', '('],
  ['max(bore', inMm, 'unclosed-bracket', '('],
  ['bore)', inMm, 'unopened-bracket', ')'],
  ['bore, 3', inMm, 'stray-comma', ','],
  ['"wall', inMm, 'unclosed-quote', '"wall'],
  ['" " + 3', inMm, 'empty-name', '" "'],
  ['bore of', inMm, 'part-missing', 'of'],
  ['bore of + 3', inMm, 'part-missing', 'of'],
  ['bore of guide column', inMm, 'name-needs-quotes', 'bore of guide column'],
  ['wall thickness + 3', inMm, 'name-needs-quotes', 'wall thickness'],
  ['bore # 3', inMm, 'operator-expected', '#'],
  ['sqrrt(3)', inMm, 'unknown-function', 'sqrrt'],
  ['sin()', inMm, 'unexpected', ')'],
  ['sqrt(1, 2)', inMm, 'argument-count', 'sqrt(1, 2)'],
  ['atan2(1)', inMm, 'argument-count', 'atan2(1)'],
  ['max(12,5 mm; 3 mm)', inMm, 'mixed-separators', 'max(12,5 mm;'],
])('%s: %s', (text, options, code, at) => {
  const found = problem(text, options);
  if (code === 'quantity') expect(found).toBe('quantity');
  else expect(found).toEqual([code, at]);
});

test('a problem carries what its sentence needs', () => {
  const written = parseWritten('sqrrt(3)', inMm);
  expect(!written.ok && written.error.data).toEqual({ name: 'sqrrt', nearest: 'sqrt' });
});

test('endless brackets, signs and powers are refused or read, never a crash', () => {
  expect(problem('('.repeat(10_000), inMm)[0]).toBe('too-deep');
  expect(problem('sqrt('.repeat(1_500), inMm)[0]).toBe('too-deep');
  expect(problem('2^'.repeat(4_000), inMm)[0]).toBe('too-deep');
  expect(problem('1'.repeat(20_000), inMm)[0]).toBe('too-large');
  expect(problem(`bore${'+1'.repeat(6_000)}`, inMm)[0]).toBe('too-long');
  expect(problem(`${'-'.repeat(9_000)}bore`, inMm)).toBe('formula');
  expect(problem(`bore${'+1'.repeat(4_000)}`, inMm)).toBe('formula');
  expect(problem(`max(${'1;'.repeat(900)}1)`, inMm)).toBe('formula');
});

test('names are found once each, in order of first mention, with the place of that mention', () => {
  const text = 'bore + "wall thickness" of “guide column” * BORE - bore OF Base';
  const written = parseWritten(text, inMm);
  if (!written.ok || written.value.is !== 'formula') throw new Error('not a formula');
  const found = written.value.formula.references.map(({ name, part, start, end }) => [
    name,
    part,
    text.slice(start, end),
  ]);
  expect(found).toEqual([
    ['bore', undefined, 'bore'],
    ['wall thickness', 'guide column', '"wall thickness" of “guide column”'],
    ['bore', 'Base', 'bore OF Base'],
  ]);
});

describe('threads', () => {
  const thread = of('length', { thread: true });

  test('stand for their major diameter', () => {
    expect(quantity('M8', thread)).toEqual({ is: 'quantity', value: 8, unit: 'mm' });
    expect(quantity('1/4-20 UNC', thread)).toEqual({ is: 'quantity', value: 6.35, unit: 'in' });
    expect(quantity('#10-32', thread)).toEqual({ is: 'quantity', value: 4.826, unit: 'in' });
  });

  test('need a pitch, and may be formulas', () => {
    expect(problem('8 mm', thread)).toEqual(['thread-without-pitch', '8 mm']);
    expect(problem('1/4', thread)).toEqual(['thread-without-pitch', '1/4']);
    expect(problem('stud of column', thread)).toBe('formula');
    expect(problem('M8 of column', thread)).toBe('formula');
  });
});
