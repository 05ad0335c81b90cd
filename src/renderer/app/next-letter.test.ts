import { expect, test } from 'vitest';
import { nextLetter } from './next-letter.ts';

const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

test.each([
  [[], 'A'],
  [['A'], 'B'],
  [['a', 'B'], 'C'],
  [['B'], 'A'],
  [alphabet, 'AA'],
  [[...alphabet, 'AA', 'AB'], 'AC'],
  [[...alphabet, ...alphabet.map((letter) => `A${letter}`)], 'BA'],
])('after %j comes %s', (taken, letter) => {
  expect(nextLetter(taken)).toBe(letter);
});
