import { describe, expect, test } from 'vitest';
import { between, directions, fitted, type Look, panned, sides, turned, zoomed } from './camera.ts';

const look: Look = { turn: 35, tip: 28, middle: [10, 20, 30], mmPerPixel: 0.5 };

/** Where a point of the part appears, in pixels from the middle, to the right and down. */
const seenAt = (point: readonly number[], { middle, mmPerPixel, ...way }: Look) => {
  const { right, up } = directions(way);
  const dot = (d: readonly number[]) => d.reduce((sum, part, k) => sum + part * (point[k]! - middle[k]!), 0);
  return { x: dot(right) / mmPerPixel, y: -dot(up) / mmPerPixel };
};

describe('looking at a part', () => {
  test.each([
    ['front', [1, 0, 0], [0, 0, 1]],
    ['right', [0, 1, 0], [0, 0, 1]],
    ['left', [0, -1, 0], [0, 0, 1]],
    ['back', [-1, 0, 0], [0, 0, 1]],
    ['top', [1, 0, 0], [0, 1, 0]],
    ['underneath', [1, 0, 0], [0, -1, 0]],
  ] as const)('from the %s', (side, right, up) => {
    const seen = directions(sides[side]);
    for (let k = 0; k < 3; k++) {
      expect(seen.right[k]).toBeCloseTo(right[k]!, 12);
      expect(seen.up[k]).toBeCloseTo(up[k]!, 12);
    }
  });

  test('the three directions are square to one another and make a right hand', () => {
    const { right, up, towards } = directions(look);
    const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, part, k) => sum + part * b[k]!, 0);
    expect(dot(right, up)).toBeCloseTo(0, 12);
    expect(dot(up, towards)).toBeCloseTo(0, 12);
    expect(right[1] * up[2] - right[2] * up[1]).toBeCloseTo(towards[0], 12);
    expect(dot(towards, towards)).toBeCloseTo(1, 12);
  });

  test('what is under the pointer stays there while the picture comes closer', () => {
    const point = [17, -4, 42];
    const before = seenAt(point, look);
    const after = seenAt(point, zoomed(look, 3, before.x, before.y));
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });

  test('a point follows the hand that pans', () => {
    const before = seenAt([1, 2, 3], look);
    const after = seenAt([1, 2, 3], panned(look, 12, -7));
    expect(after.x - before.x).toBeCloseTo(12, 9);
    expect(after.y - before.y).toBeCloseTo(-7, 9);
  });

  test('a fitted box lies wholly in the picture and fills most of it', () => {
    const box = { min: [-5, 0, 10], max: [95, 40, 30] } as const;
    const fit = fitted(sides.slantwise, box, 800, 500);
    let most = 0;
    for (const x of [box.min[0], box.max[0]]) {
      for (const y of [box.min[1], box.max[1]]) {
        for (const z of [box.min[2], box.max[2]]) {
          const at = seenAt([x, y, z], fit);
          expect(Math.abs(at.x)).toBeLessThanOrEqual(400);
          expect(Math.abs(at.y)).toBeLessThanOrEqual(250);
          most = Math.max(most, Math.abs(at.x) / 400, Math.abs(at.y) / 250);
        }
      }
    }
    expect(most).toBeGreaterThan(0.8);
  });

  test('tipping ends at straight down and straight up; turning goes round', () => {
    expect(turned(look, 0, 400).tip).toBe(90);
    expect(turned(look, 0, -400).tip).toBe(-90);
    expect(turned(look, 350, 0).turn).toBeCloseTo(25, 9);
  });

  test('half-way takes the short way round', () => {
    const from = { ...look, turn: 170 };
    const to = { ...look, turn: -170, mmPerPixel: 2 };
    expect(between(from, to, 0.5).turn).toBeCloseTo(180, 9);
    expect(between(from, to, 0.5).mmPerPixel).toBeCloseTo(1, 9);
    expect(between(from, to, 1)).toEqual(to);
  });
});
