import { describe, expect, test } from 'vitest';
import { type Axis, axes } from '../../build/station.ts';
import { crossed, latheFrame, zeroAcross } from './picture-frame.ts';

const vector = ({ axis, sign }: { readonly axis: Axis; readonly sign: 1 | -1 }): readonly number[] =>
  axes.map((one) => (one === axis ? sign : 0));

const cross = (a: readonly number[], b: readonly number[]): readonly number[] => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];

describe('directions of a picture', () => {
  const directions = axes.flatMap((axis) => ([1, -1] as const).map((sign) => ({ axis, sign })));
  test('the third is the vector product of two', () => {
    for (const first of directions) {
      for (const second of directions) {
        if (first.axis === second.axis) continue;
        const wanted = cross(vector(first), vector(second)).map((one) => one + 0);
        expect(vector(crossed(first, second))).toEqual(wanted);
      }
    }
  });

  test('seen from the tailstock the back lies to the right: up × along = back', () => {
    for (const axis of axes) {
      for (const sense of [1, -1] as const) {
        const frame = latheFrame(axis, sense, 7, { axis, u: 3, v: -2 });
        expect(vector(frame.back)).toEqual(cross(vector(frame.up), vector(frame.along)).map((one) => one + 0));
        expect(frame.along).toEqual({ axis, sign: sense, zero: 7 });
        // What lies across counts from the line.
        expect([frame.back.zero, frame.up.zero].sort()).toEqual([-2, 3]);
      }
    }
  });

  test('the line is zero across it, by the order of the alphabet', () => {
    expect(zeroAcross({ axis: 'Y', u: 3, v: -2 }, 'X')).toBe(3);
    expect(zeroAcross({ axis: 'Y', u: 3, v: -2 }, 'Z')).toBe(-2);
  });
});
