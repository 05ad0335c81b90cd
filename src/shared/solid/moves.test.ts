import { describe, expect, test } from 'vitest';
import { compose, cosDeg, handOf, mirrorAbout, moved, STAY, shiftAlong, sinDeg, turnAbout } from './moves.ts';
import type { Vec3 } from './placed.ts';

const near = (point: Vec3) => point.map((value) => expect.closeTo(value, 12));

describe('moves', () => {
  const point: Vec3 = [1, 2, 3];

  test.each([
    ['about X, from Y towards Z', turnAbout('X', 0, 0, 90), [1, -3, 2]],
    ['about Y, from X towards Z', turnAbout('Y', 0, 0, 90), [-3, 2, 1]],
    ['about Z, from X towards Y', turnAbout('Z', 0, 0, 90), [-2, 1, 3]],
    ['about a line beside the origin', turnAbout('Z', 1, 1, 180), [1, 0, 3]],
    ['along an axis', shiftAlong('Y', -5), [1, -3, 3]],
    ['to its mirror image', mirrorAbout('X', 4), [7, 2, 3]],
  ] as const)('%s', (_name, move, to) => {
    // Right angles are exact, so that what should meet does meet.
    expect(moved(move, point)).toEqual(to);
  });

  test('one after the other', () => {
    const turnThenShift = compose(shiftAlong('X', 10), turnAbout('Z', 0, 0, 90));
    expect(moved(turnThenShift, point)).toEqual([8, 1, 3]);
    const shiftThenTurn = compose(turnAbout('Z', 0, 0, 90), shiftAlong('X', 10));
    expect(moved(shiftThenTurn, point)).toEqual([-2, 11, 3]);
    expect(compose(STAY, shiftThenTurn)).toEqual(shiftThenTurn);
  });

  test('three thirds of a turn come back', () => {
    const third = turnAbout('X', 7, -3, 120);
    expect(moved(compose(third, compose(third, third)), point)).toEqual(near(point));
  });

  test('a mirror image changes hands, a turn does not', () => {
    expect(handOf(mirrorAbout('Z', 3))).toBe(-1);
    expect(handOf(turnAbout('Y', 3, 1, 77))).toBe(1);
    expect(handOf(compose(mirrorAbout('X', 0), mirrorAbout('Y', 0)))).toBe(1);
  });
});

test('sine and cosine of degrees agree with those of radians, and are exact where they can be', () => {
  for (let degrees = -720; degrees <= 720; degrees += 7.5) {
    expect(sinDeg(degrees)).toBeCloseTo(Math.sin((degrees * Math.PI) / 180), 12);
    expect(cosDeg(degrees)).toBeCloseTo(Math.cos((degrees * Math.PI) / 180), 12);
  }
  expect([0, 30, 90, 150, 180, 210, 270, 330, -30, -90].map(sinDeg)).toEqual([
    0, 0.5, 1, 0.5, 0, -0.5, -1, -0.5, -0.5, -1,
  ]);
  expect([0, 60, 90, 120, 180, 240, 270, 300, 360].map(cosDeg)).toEqual([1, 0.5, 0, -0.5, -1, -0.5, 0, 0.5, 1]);
});
