import { expect, test } from 'vitest';
import { slipBetween } from './slips.ts';

test.each([
  [1.5, 38.1, 1, 'inch-for-mm'],
  [508, 20, 1, 'mm-for-inch'],
  [64, 46, 1, 'digits-swapped'],
  [12.5, 15.2, 1, 'digits-swapped'],
  [1.25 * 25.4, 1.52 * 25.4, 25.4, 'digits-swapped'],
  [12.5, 125, 1, 'decimal-point'],
  [400, 4, 1, 'decimal-point'],
  [17, -17, 1, 'wrong-sign'],
  [40, 20, 1, 'diameter-for-radius'],
  [20, 40, 1, 'diameter-for-radius'],
  [20, 20.005, 1, undefined],
  [20, 33, 1, undefined],
  [20, 0, 1, undefined],
  [0, 20, 1, undefined],
] as const)('%d for %d: %s', (reads, wouldBe, perUnit, slip) => {
  expect(slipBetween(reads, wouldBe, perUnit, 0.01)).toBe(slip);
});
