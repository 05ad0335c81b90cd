import { expect, test } from 'vitest';
import { isBareName, renameReferences } from './rename.ts';
import type { WrittenOptions } from './written.ts';

const options: WrittenOptions = { kind: 'length', lengthUnit: 'mm' };

const rename = (text: string, changes: Readonly<Record<string, string>>) =>
  renameReferences(text, options, ({ name, part }) => ({
    name: changes[name.toLowerCase()] ?? name,
    part: part === undefined ? undefined : (changes[part.toLowerCase()] ?? part),
  }));

test.each<[string, Readonly<Record<string, string>>, string]>([
  ['2*bore+3 mm', { bore: 'width' }, '2*width+3 mm'],
  [' bore  -  BORE ', { bore: 'width' }, ' width  -  width '],
  ['bore + boreal', { bore: 'width' }, 'width + boreal'],
  ['bore + 1', { bore: 'wall thickness' }, '"wall thickness" + 1'],
  ["'wall x'+1", { 'wall x': 'wall' }, '"wall"+1'],
  ['bore', { bore: '2nd "inner" bore' }, `'2nd "inner" bore'`],
  ['bore', { bore: `5" o'clock` }, `"5"" o'clock"`],
  ['bore', { bore: 'pi' }, '"pi"'],
  ['bore of column', { column: 'guide column' }, 'bore of "guide column"'],
  ['bore   OF  column', { bore: 'b', column: 'c' }, 'b   OF  c'],
  ['max(bore; 3/8 in)', { bore: 'b' }, 'max(b; 3/8 in)'],
  ['12.50 mm', { mm: 'x' }, '12.50 mm'],
  ['bore +', { bore: 'b' }, 'bore +'],
  ['', { bore: 'b' }, ''],
])('%s with %j', (text, changes, renamed) => {
  expect(rename(text, changes)).toBe(renamed);
});

test('a mention left alone keeps its very letters', () => {
  expect(renameReferences('“wall x” + Bore', options, () => undefined)).toBe('“wall x” + Bore');
  expect(renameReferences('“wall x” + Bore', options, (reference) => reference)).toBe('“wall x” + Bore');
});

test('a part may be added or taken away', () => {
  expect(renameReferences('bore+1', options, ({ name }) => ({ name, part: 'base plate' }))).toBe(
    'bore of "base plate"+1',
  );
  expect(renameReferences('bore of base+1', options, ({ name }) => ({ name, part: undefined }))).toBe('bore+1');
});

test('a thread is no name', () => {
  const changed = () => ({ name: 'hole', part: undefined });
  expect(renameReferences('M8', { ...options, thread: true }, changed)).toBe('M8');
  expect(renameReferences('M8', options, changed)).toBe('hole');
});

test('bare names', () => {
  for (const name of ['bore', '_a1', 'Ölwanne', 'bore_2']) expect(isBareName(name), name).toBe(true);
  for (const name of ['', '2nd', 'wall x', 'a-b', 'pi', 'OF', 'a"']) expect(isBareName(name), name).toBe(false);
});
