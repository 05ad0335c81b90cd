import { expect, test } from 'vitest';
import { editDistance, nearestName } from './nearest-name.ts';

const names = ['bore', 'bore depth', 'stroke', 'wall thickness', 'flange', 'Flange height', 'web'];

test.each([
  ['bor', 'bore'],
  ['broe', 'bore'],
  ['BORE', 'bore'],
  ['stork', 'stroke'],
  ['wall thikness', 'wall thickness'],
  ['wall', 'wall thickness'],
  ['flnge', 'flange'],
  ['flange heigth', 'Flange height'],
  ['wbe', 'web'],
])('%s is most like %s', (typed, nearest) => {
  expect(nearestName(typed, names)).toBe(nearest);
  expect(nearestName(typed, [...names].reverse())).toBe(nearest);
});

test.each(['', 'x', 'gudgeon', 'thickness of the wall'])('nothing is like “%s”', (typed) => {
  expect(nearestName(typed, names)).toBeUndefined();
});

test('the distance stops early, but is exact up to its bound', () => {
  expect(editDistance('kitten', 'sitting', 3)).toBe(3);
  expect(editDistance('kitten', 'sitting', 2)).toBe(3);
  expect(editDistance('ab', 'ba', 2)).toBe(1);
  expect(editDistance('a'.repeat(1000), 'b'.repeat(1000), 3)).toBe(4);
});
