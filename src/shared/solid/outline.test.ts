import { describe, expect, test } from 'vitest';
import { arcOf, isOnArc, outlineArea, outlineLength, polygonArea, roundCorners } from './outline.ts';
import { findCrossing } from './outline-crossing.ts';
import type { OutlineCorner } from './placed.ts';

const corners = (...points: readonly (readonly [u: number, v: number, radius?: number])[]) =>
  points.map(([u, v, radius = 0]) => ({ u, v, radius }));
const outline = (...points: readonly (readonly [u: number, v: number, bulge?: number])[]): readonly OutlineCorner[] =>
  points.map(([u, v, bulge = 0]) => ({ u, v, bulge }));

describe('arcs', () => {
  test.each([
    ['a half turn to the left, below its chord', 1, { u: 0, v: 0 }, 5, Math.PI],
    ['a half turn to the right, above it', -1, { u: 0, v: 0 }, 5, -Math.PI],
    ['a quarter turn to the left', Math.tan(Math.PI / 8), { u: 0, v: 5 }, 5 * Math.SQRT2, Math.PI / 2],
    ['a quarter turn to the right', -Math.tan(Math.PI / 8), { u: 0, v: -5 }, 5 * Math.SQRT2, -Math.PI / 2],
  ])('%s', (_name, bulge, centre, radius, sweep) => {
    const arc = arcOf({ u: -5, v: 0 }, { u: 5, v: 0 }, bulge);
    expect(arc.centre.u).toBeCloseTo(centre.u, 12);
    expect(arc.centre.v).toBeCloseTo(centre.v, 12);
    expect(arc.radius).toBeCloseTo(radius, 12);
    expect(arc.sweep).toBeCloseTo(sweep, 12);
    const below = isOnArc(arc, -Math.PI / 2);
    const above = isOnArc(arc, Math.PI / 2);
    expect([below, above]).toEqual([bulge > 0, bulge < 0]);
  });

  test('a circle of two half turns has its area and length', () => {
    const circle = outline([-5, 0, 1], [5, 0, 1]);
    expect(outlineArea(circle)).toBeCloseTo(25 * Math.PI, 12);
    expect(outlineLength(circle)).toBeCloseTo(10 * Math.PI, 12);
    expect(findCrossing(circle)).toBeUndefined();
  });
});

describe('rounded corners', () => {
  test('of a square lie exactly on its sides', () => {
    const square = corners([0, 0, 2], [10, 0], [10, 10], [0, 10]);
    expect(roundCorners(square)).toEqual({
      outline: outline([0, 2, Math.SQRT2 - 1], [2, 0], [10, 0], [10, 10], [0, 10]).map((corner, i) =>
        i === 0 ? { ...corner, bulge: expect.closeTo(Math.SQRT2 - 1, 15) } : corner,
      ),
    });
  });

  test('of an inner corner turn the other way', () => {
    const result = roundCorners(corners([0, 0], [10, 0], [10, 4], [4, 4, 3], [4, 10], [0, 10]));
    const made = 'outline' in result ? result.outline : [];
    expect(made.filter(({ bulge }) => bulge < 0)).toHaveLength(1);
    // The inner rounding fills the corner: 64 for the angle iron, and 9 (1 − π/4) more.
    expect(outlineArea(made)).toBeCloseTo(64 + 9 * (1 - Math.PI / 4), 12);
  });

  test('a clockwise polygon is turned round, and its corners are named as they were given', () => {
    const clockwise = corners([0, 10], [10, 10, 7], [10, 0, 7], [0, 0]);
    expect(polygonArea(clockwise)).toBeLessThan(0);
    expect(roundCorners(clockwise)).toEqual({ why: 'radius', at: [2, 1] });
    expect(roundCorners(corners([0, 0], [0, 0], [5, 0], [5, 5]))).toEqual({ why: 'zero', at: [0, 1] });
  });
});

describe('crossings', () => {
  test.each<[string, readonly OutlineCorner[]]>([
    ['a square', outline([0, 0], [10, 0], [10, 10], [0, 10])],
    ['corners in line', outline([0, 0], [5, 0], [10, 0], [10, 10])],
    ['a rounded slot', outline([0, 0], [10, 0, 1], [10, 4], [0, 4, 1])],
    ['a fillet with its two cusps', outline([0, 0], [5, 0, -Math.tan(Math.PI / 8)], [0, 5])],
    ['a notch of a hair', outline([0, 0], [10, 0], [10, 10], [5.00001, 10], [5, 1], [4.99999, 10], [0, 10])],
    ['a crescent', outline([-5, 0, 1], [5, 0, -0.5])],
  ])('%s has none', (_name, clean) => {
    expect(findCrossing(clean)).toBeUndefined();
  });

  test.each<[string, readonly OutlineCorner[], readonly [number, number]]>([
    ['a bow-tie', outline([0, 0], [10, 10], [10, 0], [0, 10]), [0, 2]],
    ['an arc that bows into the other side', outline([0, 0, -1], [10, 0], [10, 4], [0, 4]), [0, 2]],
    ['an arc that touches the other side', outline([0, 0, -1], [10, 0], [12, 5], [-2, 5]), [0, 2]],
    ['two arcs that cross', outline([0, 0, -1], [10, 0], [10, 8, -1], [0, 8]), [0, 2]],
    ['a side along another', outline([0, 0], [10, 0], [10, 5], [4, 5], [4, 0], [2, 0], [2, 5], [0, 5]), [0, 3]],
    ['a spike', outline([0, 0], [10, 0], [15, 0], [10, 0], [10, 10]), [0, 2]],
    ['the arc of one circle twice', outline([-5, 0, 1], [5, 0], [5, 9], [-5, 9], [-5, 0, 1], [5, 0], [20, -9]), [0, 3]],
  ])('%s is found', (_name, crossed, sides) => {
    expect(findCrossing(crossed)).toEqual(sides);
  });
});
