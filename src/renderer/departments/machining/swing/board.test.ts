import { describe, expect, test } from 'vitest';
import { layOut, pathOf, stack } from './board.ts';

const front = { left: -100, bottom: -80, right: 300, top: 60 };
const end = { left: -70, bottom: -90, right: 70, top: 80 };

describe('views on one sheet', () => {
  test('beside each other they share scale and line of centres, and lie on the sheet', () => {
    const [a, b] = layOut(front, end, undefined, 800, 400);
    expect(a.scale).toBe(b.scale);
    expect(a.at([0, 0])[1]).toBeCloseTo(b.at([0, 0])[1], 9);
    for (const [board, box] of [
      [a, front],
      [b, end],
    ] as const) {
      const [left, top] = board.at([box.left, box.top]);
      const [right, bottom] = board.at([box.right, box.bottom]);
      expect(Math.min(left, top)).toBeGreaterThanOrEqual(-1e-9);
      expect(right).toBeLessThanOrEqual(800 + 1e-9);
      expect(bottom).toBeLessThanOrEqual(400 + 1e-9);
    }
    expect(b.at([end.left, 0])[0]).toBeGreaterThan(a.at([front.right, 0])[0]);
  });

  test('a third stands under the first where that makes none smaller', () => {
    const above = { ...front, bottom: -60, top: 60 };
    const [a, , third] = layOut(front, end, above, 560, 900);
    expect(third?.scale).toBe(a.scale);
    expect(third?.at([40, 0])[0]).toBeCloseTo(a.at([40, 0])[0], 9);
    expect(third?.at([0, above.top])[1]).toBeGreaterThan(a.at([0, -90])[1]);
    expect(layOut(front, end, above, 800, 300)[2]).toBeUndefined();
    // Scale is what it is without it.
    expect(layOut(front, end, undefined, 560, 900)[0].scale).toBe(a.scale);
  });

  test('one over the other they share the places along the bed', () => {
    const [a, b] = stack(front, { ...front, bottom: -120, top: 90, left: -60 }, 500, 500);
    expect(a.scale).toBe(b.scale);
    expect(a.at([40, 0])[0]).toBeCloseTo(b.at([40, 0])[0], 9);
    expect(b.at([0, 90])[1]).toBeGreaterThan(a.at([0, front.bottom])[1]);
  });

  test('a place of the sheet is found again along the bed', () => {
    const [a] = layOut(front, end, undefined, 800, 400);
    expect(a.along(a.at([123, 5])[0])).toBeCloseTo(123, 9);
  });

  test('a path goes through its points, up being up', () => {
    const [a] = layOut(front, end, undefined, 800, 400);
    const path = pathOf(
      a,
      [
        [0, 0],
        [10, 20],
      ],
      true,
    );
    const numbers = path.match(/-?\d+\.\d/g)!.map(Number);
    expect(path).toMatch(/^M.*L.*Z$/);
    expect(numbers[3]).toBeLessThan(numbers[1]!);
    expect(pathOf(a, [], true)).toBe('');
  });
});
