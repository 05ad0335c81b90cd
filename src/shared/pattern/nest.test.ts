import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Board } from './boards.ts';
import type { Section } from './cut-sections.ts';
import { type LaidSection, nestSections } from './nest.ts';

const section = (name: string, width: number, height: number, thickness = 20): Section => {
  const outline = [
    [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
  ] as const;
  return {
    name,
    layer: 0,
    low: 0,
    high: thickness,
    lower: outline,
    upper: outline,
    outline,
    cut: 'straight',
    pairs: [],
    wire: { lower: outline, upper: outline },
    openings: 0,
    cutMm: 2 * (width + height),
    volumeMm3: width * height * thickness,
    wireMm3: width * height * thickness,
    box: { min: [0, 0], max: [width, height] },
  };
};
const board = (thicknessMm: number, lengthMm: number, widthMm: number, count: number, index = 0): Board => ({
  index,
  name: `${thicknessMm}`,
  thicknessMm,
  lengthMm,
  widthMm,
  count,
});

describe('sections on boards', () => {
  test('four that just fill one', () => {
    const four = ['1', '2', '3', '4'].map((name) => section(name, 49, 24));
    const { boards, waste, short, sliced } = nestSections(four, [board(20, 100, 50, 3)], 2);
    expect(boards).toHaveLength(1);
    expect(boards[0]!.laid).toHaveLength(4);
    expect([short, sliced]).toEqual([[], []]);
    expect(waste).toBeCloseTo(1 - (4 * 49 * 24) / 5000, 12);
  });
  test('turned where it fits only so', () => {
    const { boards } = nestSections([section('1', 30, 90)], [board(20, 100, 40, 1)], 1);
    expect(boards[0]!.laid).toMatchObject([{ turned: true, width: 90, height: 30 }]);
  });
  test('the thinnest board that is thick enough, sliced where it is thicker', () => {
    const kinds = [board(50, 100, 50, 1, 0), board(25, 100, 50, 1, 1)];
    const { boards, sliced } = nestSections([section('1', 40, 40, 25), section('2', 40, 40, 30)], kinds, 1);
    expect(boards.map((one) => [one.board, one.laid.map((laid) => laid.section)])).toEqual([
      [1, ['1']],
      [0, ['2']],
    ]);
    expect(sliced).toEqual(['2']);
  });
  test('when a kind runs out, a thicker one serves; then boards are short', () => {
    const kinds = [board(50, 100, 50, 1, 0), board(25, 100, 50, 1, 1)];
    const three = ['1', '2', '3'].map((name) => section(name, 95, 45, 25));
    const { boards, short } = nestSections(three, kinds, 1);
    expect(boards).toHaveLength(2);
    expect(short).toEqual(['3']);
  });
  test('what no board is large or thick enough for', () => {
    const { tooLarge, boards } = nestSections(
      [section('1', 120, 40), section('2', 20, 20, 60)],
      [board(50, 100, 50, 5)],
      1,
    );
    expect([...tooLarge].sort()).toEqual(['1', '2']);
    expect(boards).toEqual([]);
  });
});

test('no two overlap, a kerf lies between, none sticks out, and each is laid once', () => {
  const size = fc.integer({ min: 10, max: 900 }).map((n) => n / 10);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 25 }),
      fc.constantFrom(0, 1, 2.5),
      (sizes, kerf) => {
        const sections = sizes.map(([width, height], i) => section(`${i}`, width, height));
        const { boards, short, tooLarge } = nestSections(sections, [board(20, 120, 95, 40)], kerf);
        const names = boards.flatMap(({ laid }) => laid.map((one) => one.section));
        expect([...names, ...short, ...tooLarge].sort()).toEqual(sections.map(({ name }) => name).sort());
        const isApart = (a: LaidSection, b: LaidSection): boolean =>
          a.x + a.width + kerf <= b.x + 1e-6 ||
          b.x + b.width + kerf <= a.x + 1e-6 ||
          a.y + a.height + kerf <= b.y + 1e-6 ||
          b.y + b.height + kerf <= a.y + 1e-6;
        for (const { laid } of boards) {
          laid.forEach((one, i) => {
            expect(one.x + one.width).toBeLessThanOrEqual(120 + 1e-5);
            expect(one.y + one.height).toBeLessThanOrEqual(95 + 1e-5);
            for (const other of laid.slice(i + 1)) expect(isApart(one, other)).toBe(true);
          });
        }
      },
    ),
    { numRuns: 60 },
  );
});
