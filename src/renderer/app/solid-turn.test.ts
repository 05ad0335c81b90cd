import { expect, test } from 'vitest';
import { signedAxes, turnFrom } from './solid-turn.ts';

test.each([
  ['+X', '+Z', '+Y'],
  ['+X', '-Y', '+Z'],
  ['-X', '+Z', '-Y'],
  ['+Y', '+Z', '-X'],
  ['+Z', '+Y', '+X'],
] as const)('X to %s and Z to %s bring Y to %s', (x, z, y) => {
  expect(turnFrom(x, z)).toEqual([x, y, z]);
});

test('there are 24 turns in right angles, and none for two axes along one line', () => {
  const turns = signedAxes.flatMap((x) => signedAxes.map((z) => turnFrom(x, z)));
  expect(new Set(turns.flatMap((turn) => (turn ? [turn.join()] : []))).size).toBe(24);
  expect(turns.filter((turn) => turn === undefined)).toHaveLength(12);
});
