import { expect, test } from 'vitest';
import type { MaterialLine } from '../engine/views/materials.ts';
import { lineNamed } from './lines.ts';
import { listedNames, removedWords } from './words.ts';

const line = (name: string, also: readonly string[] = [], own?: string): MaterialLine => ({
  key: own ?? name,
  own: own as MaterialLine['own'],
  name,
  also,
  known: {},
  source: '',
  status: own === undefined ? 'read' : 'own',
  isBehind: false,
  usedBy: [],
});

test('a line is found by any of its names, the build’s own first', () => {
  const table = [line('EN AC-42100', ['LM25', 'AlSi7Mg']), line('EN AC-44200', ['LM6'])];
  const lines = [line('lm25', [], 'material:a'), ...table];
  expect(lineNamed(lines, ' LM25 ')?.key).toBe('material:a');
  expect(lineNamed(table, 'lm25')?.key).toBe('EN AC-42100');
  expect(lineNamed(lines, 'LM6')?.key).toBe('EN AC-44200');
  expect(lineNamed(lines, 'LM')).toBeUndefined();
});

test('names are listed, of many the first few', () => {
  expect(listedNames(['base'])).toBe('base');
  expect(listedNames(['base', 'ram', 'yoke'])).toBe('base, ram and yoke');
  expect(listedNames(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'])).toBe('a, b, c, d, e, f and 2 more');
});

test('what becomes of the parts is said when a material goes', () => {
  expect(removedWords('Wheels', [], false)).toBe('Wheels is removed.');
  expect(removedWords('LM25', ['base', 'ram'], true)).toContain('base and ram are held to the row of the table');
  expect(removedWords('Wheels', ['base'], false)).toContain('base is still said to be made of it');
});
