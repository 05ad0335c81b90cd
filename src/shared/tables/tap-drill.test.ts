import { describe, expect, test } from 'vitest';
import { drillCalled } from './drills.ts';
import { holeForPercent, holeToTap, percentOfThread, tableTapDrill } from './tap-drill.ts';
import { knownThreads } from './threads-known.ts';

test.each(['metric', 'unified', 'whitworth', 'trapezoidal'] as const)(
  '%s: hole and percentage undo each other',
  (form) => {
    for (const percent of [0, 40, 65, 75, 100]) {
      expect(percentOfThread(form, 12, 1.75, holeForPercent(form, 12, 1.75, percent))).toBeCloseTo(percent, 10);
    }
    expect(percentOfThread(form, 12, 1.75, 12)).toBe(0);
    expect(percentOfThread(form, 12, 1.75, 12.5)).toBeLessThan(0);
  },
);

test('major less pitch leaves 77 % of a thread of 60°, all of a trapezoidal one, whatever its size', () => {
  for (const [major, pitch] of [
    [1, 0.25],
    [8, 1.25],
    [64, 6],
  ] as const) {
    expect(percentOfThread('metric', major, pitch, holeToTap(major, pitch))).toBeCloseTo(76.98, 2);
    expect(percentOfThread('trapezoidal', major, pitch, holeToTap(major, pitch))).toBeCloseTo(100, 10);
  }
});

describe('published tap drills', () => {
  test('every listed coarse metric and every unified thread has one, of a drill that there is', () => {
    for (const { name, series, form, majorMm, pitchMm } of knownThreads) {
      const row = tableTapDrill(name);
      expect(row !== undefined, name).toBe(series !== 'fine');
      if (row === undefined) continue;
      const drill = drillCalled(row.drill);
      expect(drill, `${name}: ${row.drill}`).toBeDefined();
      // A slip of a row would leave this band.
      const percent = percentOfThread(form, majorMm, pitchMm, drill!.diameterMm);
      expect(percent, name).toBeGreaterThan(60);
      expect(percent, name).toBeLessThan(86);
    }
  });

  test('status and disagreement go with the row', () => {
    expect(tableTapDrill('M8')).toEqual({
      drill: '6.8 mm',
      others: undefined,
      source: 'ISO 2306, DIN 336',
      status: 'read',
    });
    expect(tableTapDrill('#6-32')).toMatchObject({ drill: 'No 36', others: 'No 35', status: 'read' });
    expect(tableTapDrill('1-1/2-12')?.status).toBe('from memory');
  });

  test('no row, no drill', () => {
    for (const name of ['M8x1', 'M13', '1/4-22', '', 'toString', '__proto__'])
      expect(tableTapDrill(name)).toBeUndefined();
  });
});
