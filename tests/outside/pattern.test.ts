import { describe, expect, test } from 'vitest';
import { allowanceOf, roughSize } from '../../src/shared/pattern/allowance.ts';
import { growthOf } from '../../src/shared/pattern/pattern-piece.ts';
import { readContraction } from '../../src/shared/pattern/read-contraction.ts';
import { type AlloyKey, alloyNamed, alloys } from '../../src/shared/tables/alloys.ts';
import { allowanceGrades, castingTolerance, machiningAllowance } from '../../src/shared/tables/casting.ts';
import { copeExtra } from '../../src/shared/tables/pattern-practice.ts';

const figure = (name: string, key: AlloyKey): number => {
  const found = alloyNamed(name)?.figures[key];
  if (!found) throw new Error(`${name} has no ${key}`);
  return found.value;
};

describe('contraction', () => {
  // Dooley, Applied Science for Metal Workers, ch. XXXI, inches per foot.
  test.each([
    ['A356', '7/32 in/ft', 1.82],
    ['ZA-12', '7/32 in/ft', 1.82],
    ['Tin bronze', '5/32 in/ft', 1.3],
    ['Leaded red brass', '3/16 in/ft', 1.56],
    ['Grey cast iron', '3/32 in/ft', 0.78],
  ])('%s by a pattern-maker’s rule of %s', (alloy, rule, percent) => {
    const read = readContraction(rule);
    const value = read.ok ? read.value! : Number.NaN;
    expect(value).toBeCloseTo(percent, 2);
    expect(value).toBeGreaterThanOrEqual(figure(alloy, 'contractionLeast') - 0.005);
    expect(value).toBeLessThanOrEqual(figure(alloy, 'contractionMost') + 0.005);
  });
  // Westermann Tables for the Metal Trade, shrinkage; its heading says volume, its figures are linear.
  test.each([
    ['A356', 1.25],
    ['ZA-12', 1.5],
    ['Tin bronze', 1.5],
    ['Grey cast iron', 1],
  ])('%s: %d percent lies in the range', (alloy, percent) => {
    expect(percent).toBeGreaterThanOrEqual(figure(alloy, 'contractionLeast'));
    expect(percent).toBeLessThanOrEqual(figure(alloy, 'contractionMost'));
  });
  test('a page that oversizes foam by 5 % for shrinkage takes stock for contraction: no alloy contracts so', () => {
    for (const { name } of alloys) expect(figure(name, 'contractionMost')).toBeLessThan(3);
  });
  test('the sources spread by about ± 0.3 points for aluminium, 0.6 mm on 200 mm', () => {
    const half = (figure('A356', 'contractionMost') - figure('A356', 'contractionLeast')) / 2;
    expect(half).toBeCloseTo(0.3, 1);
    expect((200 * half) / 100).toBeCloseTo(0.6, 1);
  });
});

describe('required machining allowance, ISO 8062-3 (from memory)', () => {
  // Rows up to 40, 63, 100, 160, 250, 400, 630, 1000 mm.
  const sizes = [40, 63, 100, 160, 250, 400, 630, 1000];
  test.each([
    ['E', [0.4, 0.4, 0.7, 1.1, 1.4, 1.8, 2.2, 2.5]],
    ['F', [0.5, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]],
    ['G', [0.5, 0.7, 1.4, 2.2, 2.8, 3.5, 4, 5]],
    ['H', [0.7, 1, 2, 3, 4, 5, 6, 7]],
  ] as const)('grade %s', (grade, row) => {
    row.forEach((mm, i) => {
      expect(machiningAllowance(grade, sizes[i]!)).toMatchObject({ allowanceMm: mm, status: 'from memory' });
    });
  });
  test('a coarser grade never asks for less', () => {
    for (const size of sizes) {
      const row = allowanceGrades.map((grade) => machiningAllowance(grade, size)!.allowanceMm);
      expect([...row].sort((a, b) => a - b)).toEqual(row);
    }
  });
  // castfast, German sand foundry, design notes: stock per face at DCTG 11 and RMAG G by the longest side.
  test.each([
    [100, 4],
    [160, 5],
    [250, 6],
    [400, 7],
    [630, 8],
    [1000, 9],
  ])('allowance and half the tolerance, rounded up, are what a foundry asks for: %i mm, %i mm', (size, mm) => {
    const { requiredMm, halfBandMm } = allowanceOf('G', 11, size, undefined)!;
    expect(Math.ceil(requiredMm + halfBandMm - 1e-9)).toBe(mm);
  });
  // Badger Iron Works, tolerances: stock per face in inches by the size of an iron casting, drag or side and cope.
  test.each([
    [8, 0.125, 0.156],
    [14, 0.156, 0.1875],
    [18, 0.1875, 0.25],
    [24, 0.25, 0.3125],
    [30, 0.3125, 0.375],
    [36, 0.375, 0.5],
  ])('an iron foundry’s table up to %i in lies between grades D and H at DCTG 10', (inches, drag, cope) => {
    const size = inches * 25.4;
    const [fine, coarse] = (['D', 'H'] as const).map((grade) => {
      const { requiredMm, halfBandMm } = allowanceOf(grade, 10, size, undefined)!;
      return requiredMm + halfBandMm;
    });
    expect(drag * 25.4).toBeGreaterThan(fine!);
    expect(drag * 25.4).toBeLessThan(coarse!);
    // Its faces that look up get more too, and no more than ours.
    expect((cope - drag) * 25.4).toBeLessThanOrEqual(copeExtra(size)!.value);
  });
});

describe('rough sizes, ISO 8062:1994 clause 6 (from memory)', () => {
  const [rma, ct] = [machiningAllowance('G', 250)!.allowanceMm, 2 * castingTolerance(11, 200)!.plusMinus];
  test('of 200 mm with one face machined, with two, and of a bore', () => {
    expect([rma, ct]).toEqual([2.8, 5.6]);
    expect(roughSize.oneFace(200, rma, ct)).toBeCloseTo(205.6, 12);
    expect(roughSize.twoFaces(200, rma, ct)).toBeCloseTo(208.4, 12);
    expect(roughSize.bore(200, rma, ct)).toBeCloseTo(191.6, 12);
  });
  test('the smallest casting still has the required allowance on its faces', () => {
    expect(roughSize.twoFaces(200, rma, ct) - ct / 2 - 200).toBeCloseTo(2 * rma, 12);
  });
});

test('draft of 2° over 50 mm is 1.75 mm (trigonometry)', () => {
  const { at } = growthOf(0, 50, 0, Math.tan((2 * Math.PI) / 180));
  expect(at(0)).toBeCloseTo(1.746, 3);
  expect(at(50)).toBe(0);
});
