import { expect, test } from 'vitest';
import { castingTolerance, machiningAllowance } from './casting.ts';
import { copeExtra, patternPractice } from './pattern-practice.ts';

// Source: allowances published by the sand foundry castfast (their design notes, page 1688), DCTG 11 with RMAG G: stock per
// face by the longest axis, and what upper faces get besides.
const published = [
  [100, 4, 1],
  [160, 5, 1],
  [250, 6, 2],
  [400, 7, 3],
  [630, 8, 3],
  [1000, 9, 4],
] as const;

test.each(published)('the longest side %i mm: %i mm a face, %i more above', (largest, face, more) => {
  const required = machiningAllowance('G', largest)!.allowanceMm;
  const half = castingTolerance(11, largest)!.plusMinus;
  expect(Math.ceil(required + half - 1e-9)).toBe(face);
  expect(copeExtra(largest)?.value).toBe(more);
  expect(copeExtra(largest)?.status).toBe('read');
});

test('beyond the table nothing is said', () => {
  expect(copeExtra(1001)).toBeUndefined();
});

test('what has no source says so', () => {
  for (const { status, source } of Object.values(patternPractice)) {
    expect(status === 'starting value' || status === 'from memory' || status === 'read').toBe(true);
    expect(source).not.toBe('');
  }
});
