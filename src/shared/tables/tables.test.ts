import { describe, expect, test } from 'vitest';
import { castingTolerance, machiningAllowance } from './casting.ts';
import { gradeWidth, toleranceGrades } from './iso286.ts';
import { type GeneralClass, type GeneralForm, generalTolerance } from './iso2768.ts';
import { coarsePitch, metricThreads } from './metric-threads.ts';
import { unifiedThreads } from './unified-threads.ts';

describe('general tolerances', () => {
  test.each<[GeneralClass, GeneralForm, number, number | undefined]>([
    ['m', 'linear', 0.49, undefined],
    ['m', 'linear', 0.5, 0.1],
    ['m', 'linear', 3, 0.1],
    ['m', 'linear', 30, 0.2],
    ['m', 'linear', 30.001, 0.3],
    ['m', 'linear', 4000, 2],
    ['m', 'linear', 4000.1, undefined],
    ['m', 'linear', 0, undefined],
    ['m', 'linear', -30, undefined],
    ['m', 'linear', Number.NaN, undefined],
    ['f', 'linear', 3000, undefined],
    ['v', 'linear', 2, undefined],
    ['v', 'linear', 4, 0.5],
    ['c', 'edge', 8, 2],
    ['f', 'edge', 1e6, 1],
    ['m', 'edge', 0.4, undefined],
    ['m', 'angle', 10, 1],
    ['m', 'angle', 0, undefined],
    ['c', 'angle', 60, 0.5],
    ['v', 'angle', 5000, 20 / 60],
  ])('class %s, %s, %f: ± %f', (klass, form, size, plusMinus) => {
    expect(generalTolerance(klass, form, size)?.plusMinus).toBe(plusMinus);
  });

  test('the row says where it comes from', () => {
    expect(generalTolerance('m', 'linear', 50)).toEqual({
      plusMinus: 0.3,
      row: 'ISO 2768-1:1989 table 1, class m, 30 to 120 mm',
      status: 'read',
    });
    expect(generalTolerance('f', 'edge', 20)?.row).toBe('ISO 2768-1:1989 table 2, class f, over 6 mm');
    expect(generalTolerance('m', 'angle', 5)).toMatchObject({
      row: 'ISO 2768-1:1989 table 3, class m, up to 10 mm (from memory)',
      status: 'from memory',
    });
  });
});

describe('casting tolerances', () => {
  test.each([
    [11, 10, 1.4],
    [11, 10.1, 1.5],
    [11, 10_000, 8],
  ])('DCTG %i at %f mm: ± %f', (grade, size, plusMinus) => {
    expect(castingTolerance(grade, size)?.plusMinus).toBe(plusMinus);
  });

  test('no cell, no tolerance', () => {
    for (const [grade, size] of [
      [16, 10],
      [1, 200],
      [0, 50],
      [17, 50],
      [11.5, 50],
      [11, 0],
      [11, 10_001],
      [11, Number.NaN],
    ] as const) {
      expect(castingTolerance(grade, size), `${grade} ${size}`).toBeUndefined();
    }
  });

  test('what is from memory says so', () => {
    expect(castingTolerance(11, 200)).toEqual({
      plusMinus: 2.8,
      row: 'ISO 8062-3:2007 table 2, DCTG 11, half of 5.6 mm, 160 to 250 mm',
      status: 'read',
    });
    expect(castingTolerance(11, 800)?.row).toMatch(/\(from memory\)$/);
    expect(castingTolerance(12, 500)?.status).toBe('read');
    expect(castingTolerance(13, 500)?.status).toBe('from memory');
    expect(machiningAllowance('F', 300)).toEqual({
      allowanceMm: 2.5,
      row: 'ISO 8062-3:2007, required machining allowance grade F, 250 to 400 mm overall (from memory)',
      status: 'from memory',
    });
    expect(machiningAllowance('F', 20_000)).toBeUndefined();
  });

  test('bands grow with the size and with the grade', () => {
    const sizes = [5, 12, 20, 30, 50, 80, 120, 200, 300, 500, 800, 1300, 2000, 3000, 5000, 8000];
    for (let grade = 1; grade <= 16; grade++) {
      const row = sizes.map((size) => castingTolerance(grade, size)?.plusMinus).filter((value) => value !== undefined);
      expect(row, `grade ${grade}`).toEqual([...row].sort((a, b) => a - b));
    }
    for (const size of sizes) {
      const row = Array.from({ length: 16 }, (_, i) => castingTolerance(i + 1, size)?.plusMinus);
      const known = row.filter((value) => value !== undefined);
      expect(known, `${size} mm`).toEqual([...known].sort((a, b) => a - b));
    }
  });
});

test('tolerance grades', () => {
  expect(gradeWidth(7, 25)).toEqual({
    widthMm: 0.021,
    row: 'ISO 286-1:2010 table 1, IT7, 18 to 30 mm',
    status: 'read',
  });
  expect(gradeWidth(7, 501)).toBeUndefined();
  for (const size of [2, 5, 8, 15, 25, 40, 60, 100, 150, 200, 300, 350, 450]) {
    const widths = toleranceGrades.map((grade) => gradeWidth(grade, size)!.widthMm);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
  }
});

test('threads', () => {
  expect(coarsePitch(8)).toBe(1.25);
  expect(coarsePitch(13)).toBeUndefined();
  for (const { diameter, coarse, fine } of metricThreads) {
    expect(Math.max(0, ...fine), `M${diameter}`).toBeLessThan(coarse);
  }
  for (const { size, perInch, majorInch } of unifiedThreads) expect(1 / perInch, size).toBeLessThan(majorInch);
  expect(new Set(unifiedThreads.map(({ size, series, isNumber }) => `${size} ${series} ${isNumber}`)).size).toBe(
    unifiedThreads.length,
  );
});
