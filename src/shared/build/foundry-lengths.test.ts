import { expect, test } from 'vitest';
import { firstPour, foundryRecords, fullCasting } from '../../../tests/support/sample-foundry.ts';
import type { BuildRecord } from './records.ts';
import { validateBuild } from './validate-build.ts';
import { withUnits } from './with-unit.ts';

/** Members whose text differs, as `path: before → after`. */
function changesOf(from: unknown, to: unknown, path = ''): readonly string[] {
  if (typeof from !== 'object' || from === null) return from === to ? [] : [`${path}: ${from} → ${to}`];
  return Object.entries(from).flatMap(([key, value]) =>
    changesOf(value, (to as Record<string, unknown>)[key], path === '' ? key : `${path}/${key}`),
  );
}

test('lengths of a casting get their unit; contraction, draft and density have none', () => {
  expect(changesOf(fullCasting, withUnits(fullCasting, 'mm')).toSorted()).toEqual(
    [
      'stock/0/written: 3 → 3 mm',
      'sizeStock/0/written: 2.5 → 2.5 mm',
      'copeExtra: 1 → 1 mm',
      'parting/beyond: 2 → 2 mm',
      'glueJoint: 0.1 → 0.1 mm',
      'prints/0/ends/0: 20 → 20 mm',
      'lugs/0/ends/0/beyond: -20 → -20 mm',
      'lugs/0/across/0/0/beyond: -8 → -8 mm',
      'lugs/0/across/1/0/beyond: -8 → -8 mm',
      'boards/0/thickness: 50 → 50 mm',
      'boards/0/width: 600 → 600 mm',
    ].toSorted(),
  );
});

test('lengths of a pour get their unit; masses, temperatures and counts have none', () => {
  expect(changesOf(firstPour, withUnits(firstPour, 'mm'))).toEqual([
    'gating/sprueHeight: 150 → 150 mm',
    'gating/sprueTop: 20 → 20 mm',
    'gating/runnerWidth: 12 → 12 mm',
    'gating/runnerHeight: 10 → 10 mm',
    'gating/runnerLength: 80 → 80 mm',
    'gating/gateWidth: 20 → 20 mm',
    'gating/gateHeight: 4 → 4 mm',
    'gating/gateLength: 15 → 15 mm',
    'risers/0/diameter: 30 → 30 mm',
    'inserts/0/length: 40 → 40 mm',
    'coverAbove: 80 → 80 mm',
  ]);
});

test('what was measured on a pattern and its casting gets its unit; what was weighed has none', () => {
  const pattern = foundryRecords.find(({ id }) => (id as string) === 'pattern:arm1') as BuildRecord;
  expect(changesOf(pattern, withUnits(pattern, 'in'))).toEqual([
    'measured/0/value: 81.1 → 81.1 in',
    'cast/0/value: 80 → 80 in',
  ]);
});

test('an alloy knows no unit of length, and all stay records', () => {
  const [alloy] = foundryRecords;
  expect(withUnits(alloy!, 'mm')).toBe(alloy);
  for (const record of foundryRecords) {
    const { problems } = { problems: [], ...validateBuild([withUnits(record, 'mm')]) };
    expect(problems.filter(({ code }) => code === 'field')).toEqual([]);
  }
});
