import { describe, expect, test } from 'vitest';
import { nameAtCaret, takeName } from './caret-name.ts';

describe('the name at the caret', () => {
  test.each([
    ['bo', 2, { start: 0, typed: 'bo' }],
    ['2 * wa', 6, { start: 4, typed: 'wa' }],
    ['2 * "wall th', 12, { start: 4, typed: '"wall th' }],
    ['1-3/8" + bo', 11, { start: 9, typed: 'bo' }],
    ['25 m', 4, undefined],
    ['25', 2, undefined],
    ['', 0, undefined],
    ['"wall" + ', 9, undefined],
  ])('%s', (text, caret, found) => {
    expect(nameAtCaret(text, caret)).toEqual(found);
  });

  test('an offer replaces what is typed of the name and nothing else', () => {
    expect(takeName('2 * "wa + 3', 7, { text: '"wall thickness"', beside: '' })).toEqual({
      text: '2 * "wall thickness" + 3',
      caret: 20,
    });
  });
});
