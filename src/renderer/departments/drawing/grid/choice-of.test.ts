import { expect, test } from 'vitest';
import { choiceOf } from './choice-of.ts';

const axes = ['X', 'Y', 'Z'];

test.each([
  ['a letter in either case', axes, 'y', 'X', 'Y'],
  ['the same letter as written', axes, 'Z', 'X', 'Z'],
  ['a letter that begins none leaves what stands there', axes, 'q', 'Y', 'Y'],
  ['a whole word', ['drawn', 'measured'], 'measured', 'drawn', 'measured'],
  ['nothing typed on an empty choice', ['', 'datum'], '', '', ''],
  ['nothing there yet', axes, '', '', 'X'],
])('%s', (_name, choices, typed, now, wanted) => {
  expect(choiceOf(choices, typed, now)).toBe(wanted);
});
