import { describe, expect, test } from 'vitest';
import { hatching } from './hatch.ts';
import { joined, without } from './intervals.ts';
import { insideLoops } from './loops.ts';
import { formsOf, frameOf, scales } from './paper.ts';
import { lineStyles, papers } from './sheet.ts';
import { shortened, textWidth, wrapped } from './text.ts';

test('papers follow from one another as ISO 216 says: each half of the one before, sides as 1 to √2', () => {
  // ISO 216:2007: A0 has one square metre; sizes from memory, the rule checks them.
  const sizes = [...papers].reverse().map((paper) => formsOf(paper)[0]!);
  expect((sizes[0]!.widthMm * sizes[0]!.heightMm) / 1e6).toBeCloseTo(1, 3);
  sizes.forEach(({ widthMm, heightMm }, i) => {
    expect(widthMm / heightMm).toBeCloseTo(Math.SQRT2, 1);
    const next = sizes[i + 1];
    if (next) expect([next.widthMm, next.heightMm]).toEqual([heightMm, Math.floor(widthMm / 2)]);
  });
});

test('the frame of A4 upright leaves 180 mm, the width of a title block in ISO 7200', () => {
  const { left, right } = frameOf(formsOf('A4')[1]!);
  expect(right - left).toBe(180);
});

test('scales run 1, 2, 5 in every decade (ISO 5455:1979) and fall all the way', () => {
  const ratios = scales.map(({ paper, part }) => paper / part);
  for (const [i, ratio] of ratios.entries()) {
    const leading = Number(ratio.toExponential(6).slice(0, 8));
    expect([1, 2, 5]).toContain(leading);
    if (i > 0) expect(ratio).toBeLessThan(ratios[i - 1]!);
  }
  expect(scales.find(({ paper, part }) => paper === part)!.words).toBe('1 : 1');
});

test('thick and thin lines stand 2 to 1 (ISO 128-2:2020)', () => {
  expect(lineStyles.visible.widthMm).toBe(2 * lineStyles.hidden.widthMm);
  for (const { widthMm } of Object.values(lineStyles)) expect([0.25, 0.5]).toContain(widthMm);
});

describe('stretches', () => {
  test.each([
    [[], [0, 10]],
    [
      [2, 3],
      [0, 2, 3, 10],
    ],
    [[0, 10], []],
    [
      [-5, 4, 6, 20],
      [4, 6],
    ],
    [
      [0, 1e-9],
      [1e-9, 10],
    ],
  ])('0 to 10 without %j', (taken, rest) => {
    expect(without(0, 10, taken, 1e-6)).toEqual(rest);
  });

  test('are joined where they touch, in any order', () => {
    expect(joined([5, 6, 0, 1, 1, 2, 5.5, 5.7], 1e-9)).toEqual([0, 2, 5, 6]);
    expect(joined([0, 1, 1.05, 2], 0.1)).toEqual([0, 2]);
  });
});

describe('hatching', () => {
  const square = (low: number, high: number) =>
    [
      [low, low],
      [high, low],
      [high, high],
      [low, high],
    ] as const;

  test('covers an area as its pitch says, and leaves holes out', () => {
    const length = (loops: Parameters<typeof hatching>[0]) =>
      hatching(loops).reduce((sum, [[ax, ay], [bx, by]]) => sum + Math.hypot(bx - ax, by - ay), 0);
    // Lines 3 mm apart: the area over the pitch, on the average.
    expect(length([square(0, 300)])).toBeCloseTo(300 ** 2 / 3, -3);
    expect(length([square(0, 300), square(100, 200)])).toBeCloseTo((300 ** 2 - 100 ** 2) / 3, -3);
    expect(hatching([])).toEqual([]);
  });

  test('a line through corners and along sides is inside where its middle is', () => {
    const [from, to, ...more] = insideLoops([square(0, 10)], [-5, -5], [15, 15]);
    expect(from).toBeCloseTo(0.25, 12);
    expect(to).toBeCloseTo(0.75, 12);
    expect(more).toEqual([]);
    expect(insideLoops([square(0, 10)], [-5, 20], [15, 20])).toEqual([]);
  });
});

describe('words', () => {
  test('are broken to a width, letter by letter where one word is too long', () => {
    const lines = wrapped(
      'one dimension more than anyone ever wanted xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx',
      2.5,
      40,
    );
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(40);
    expect(lines.join(' ').replaceAll(' ', '')).toBe(`onedimensionmorethananyoneeverwanted${'x'.repeat(41)}`);
  });

  test('are shortened with dots', () => {
    expect(shortened('short', 2.5, 40)).toBe('short');
    const cut = shortened('a name that goes on and on and on', 2.5, 30);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 2.5)).toBeLessThanOrEqual(30);
  });
});
