import type { Vec3 } from './placed.ts';

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** a + s b. */
export const plus = (a: Vec3, b: Vec3, s = 1): Vec3 => [a[0] + s * b[0], a[1] + s * b[1], a[2] + s * b[2]];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const lengthOf = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);

/** Whether two boxes come nearer than `reach` to one another along every axis. */
export const areNear = (
  a: { readonly min: Vec3; readonly max: Vec3 },
  b: { readonly min: Vec3; readonly max: Vec3 },
  reach: number,
): boolean =>
  a.min[0] <= b.max[0] + reach &&
  b.min[0] <= a.max[0] + reach &&
  a.min[1] <= b.max[1] + reach &&
  b.min[1] <= a.max[1] + reach &&
  a.min[2] <= b.max[2] + reach &&
  b.min[2] <= a.max[2] + reach;
