import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockOf, inBlock, parseTsv, withoutHeads, writeTsv } from './block.ts';

describe('a block from a spreadsheet', () => {
  test.each([
    ['one cell', '25', [['25']]],
    [
      'line ends of every kind',
      'a\tb\r\nc\td\ne\tf\r',
      [
        ['a', 'b'],
        ['c', 'd'],
        ['e', 'f'],
      ],
    ],
    ['an empty cell between', 'a\t\tb\n', [['a', '', 'b']]],
    ['inch marks stay', '1-3/8"\t"bore" / 2\n', [['1-3/8"', '"bore" / 2']]],
    ['quoted cells with line ends', '"two\nlines"\tx\n', [['two\nlines', 'x']]],
    ['doubled marks inside quotes', '"wall ""A"" of column"\n', [['wall "A" of column']]],
    ['nothing', '', []],
  ])('%s', (_name, text, rows) => {
    expect(parseTsv(text)).toEqual(rows);
  });

  test('what is copied is pasted to the letter', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', '\t', '\n', '\r', '1', '/', ' ') });
    const rows = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(rows, (block) => {
        expect(parseTsv(writeTsv(block))).toEqual(block);
      }),
      { numRuns: 2_000 },
    );
  });
});

test('a block holds its corners and nothing outside', () => {
  const block = blockOf({ row: 3, column: 1 }, { row: 1, column: 2 });
  expect(inBlock(block, 1, 1)).toBe(true);
  expect(inBlock(block, 3, 2)).toBe(true);
  expect(inBlock(block, 4, 2)).toBe(false);
  expect(inBlock(block, 2, 0)).toBe(false);
});

describe('heads of columns copied along', () => {
  const heads = [['name', 'dimension'], ['from', 'from / size', 'size'], ['to'], ['value', 'written']];
  test.each([
    [
      'heads go',
      [
        ['Dimension', 'From', 'To ', 'Value'],
        ['bore', 'diameter', '', '24'],
      ],
      1,
    ],
    [
      'a column without a head is no matter',
      [
        ['Name', '', 'to'],
        ['a', 'b', 'c'],
      ],
      1,
    ],
    ['one word may be a name', [['from'], ['to']], 2],
    [
      'heads of other columns are not heads here',
      [
        ['From', 'To'],
        ['a', 'b'],
      ],
      2,
    ],
    ['a lone line stays, whatever it says', [['Dimension', 'From']], 1],
    [
      'figures stay',
      [
        ['bore', 'diameter'],
        ['web', 'length'],
      ],
      2,
    ],
  ] as const)('%s', (_name, block, left) => {
    expect(withoutHeads(block, heads)).toEqual(block.slice(block.length - left));
  });
});
