import type { SolidImport } from '../../shared/build/commands/solid-import.ts';

export const signedAxes = ['+X', '-X', '+Y', '-Y', '+Z', '-Z'] as const;
export type SignedAxis = (typeof signedAxes)[number];

const lines = 'XYZ';
const unit = (axis: SignedAxis): readonly number[] =>
  [0, 1, 2].map((i) => (lines[i] === axis[1] ? (axis[0] === '-' ? -1 : 1) : 0));

/**
 * The turn that brings the X and Z of a file to these axes of the part; its Y then follows, as a turn mirrors nothing.
 * Undefined when the two lie along one line.
 */
export function turnFrom(x: SignedAxis, z: SignedAxis): SolidImport['turn'] | undefined {
  const [a, b] = [unit(z), unit(x)];
  // Y = Z × X.
  const y = [0, 1, 2].map((i) => a[(i + 1) % 3]! * b[(i + 2) % 3]! - a[(i + 2) % 3]! * b[(i + 1) % 3]!);
  const along = signedAxes.find((axis) => unit(axis).every((value, i) => value === y[i]));
  return along === undefined ? undefined : [x, along, z];
}
