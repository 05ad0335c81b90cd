import { describe, expect, test } from 'vitest';
import { parseWritten } from '../../src/shared/formula/parse-written.ts';
import { nearestFraction } from '../../src/shared/quantity/format.ts';
import type { Kind } from '../../src/shared/quantity/kind.ts';
import { parseThread } from '../../src/shared/quantity/parse-thread.ts';
import { gradeWidth, toleranceGrades } from '../../src/shared/tables/iso286.ts';

const readValue = (text: string, kind: Kind = 'length'): number | undefined => {
  const written = parseWritten(text, { kind, lengthUnit: 'mm' });
  return written.ok && written.value.is === 'quantity' ? written.value.value : undefined;
};

/** Source: 1 in = 25.4 mm exactly (ISO 31-1; GNU units), multiplied out by hand. */
test.each([
  ['1/64', 0.396875],
  ['1/32', 0.79375],
  ['1/16', 1.5875],
  ['3/32', 2.38125],
  ['1/8', 3.175],
  ['17/64', 6.746875],
  ['1/4', 6.35],
  ['3/8', 9.525],
  ['1/2', 12.7],
  ['27/64', 10.715625],
  ['3/4', 19.05],
  ['1-1/2', 38.1],
])('%s in is %f mm exactly', (fraction, mm) => {
  expect(readValue(fraction)).toBe(mm);
  expect(readValue(`${fraction} in`)).toBe(mm);
  expect(nearestFraction(mm)).toMatchObject({ text: `${fraction}"`, residueMm: 0 });
});

/**
 * Source: international yard and pound agreement of 1959: 1 lb = 0.453 592 37 kg exactly, 16 oz to the pound;
 * fixed points of the temperature scales: water freezes at 32 °F and boils at 212 °F, 0 °C is 273.15 K.
 */
test.each<[string, Kind, number]>([
  ['1 lb', 'mass', 0.45359237],
  ['16 oz', 'mass', 0.45359237],
  ['32 °F', 'temperature', 0],
  ['212 °F', 'temperature', 100],
  ['-40 °F', 'temperature', -40],
  ['273.15 K', 'temperature', 0],
])('%s', (text, kind, value) => {
  expect(readValue(text, kind)).toBe(value);
});

const thread = (text: string) => {
  const read = parseThread(text);
  if (!read?.ok) throw new Error(text);
  return read.value;
};

describe('unified threads', () => {
  /**
   * Source: ASME B1.1 major diameters and threads per inch, read on thread charts (ficientdesign.com, docslib.org document
   * 4942776, blackwalnutjigs.com). Sizes of which the charts read show no row are left out.
   */
  test.each<[string, 'UNC' | 'UNF', number, number]>([
    ['0-80', 'UNF', 0.06, 80],
    ['1-64', 'UNC', 0.073, 64],
    ['1-72', 'UNF', 0.073, 72],
    ['2-56', 'UNC', 0.086, 56],
    ['2-64', 'UNF', 0.086, 64],
    ['3-48', 'UNC', 0.099, 48],
    ['3-56', 'UNF', 0.099, 56],
    ['4-40', 'UNC', 0.112, 40],
    ['4-48', 'UNF', 0.112, 48],
    ['5-40', 'UNC', 0.125, 40],
    ['5-44', 'UNF', 0.125, 44],
    ['6-32', 'UNC', 0.138, 32],
    ['6-40', 'UNF', 0.138, 40],
    ['8-32', 'UNC', 0.164, 32],
    ['8-36', 'UNF', 0.164, 36],
    ['10-24', 'UNC', 0.19, 24],
    ['10-32', 'UNF', 0.19, 32],
    ['12-24', 'UNC', 0.216, 24],
    ['12-28', 'UNF', 0.216, 28],
    ['1/4-20', 'UNC', 0.25, 20],
    ['1/4-28', 'UNF', 0.25, 28],
    ['5/16-18', 'UNC', 0.3125, 18],
    ['5/16-24', 'UNF', 0.3125, 24],
    ['3/8-16', 'UNC', 0.375, 16],
    ['3/8-24', 'UNF', 0.375, 24],
    ['7/16-14', 'UNC', 0.4375, 14],
    ['7/16-20', 'UNF', 0.4375, 20],
    ['1/2-13', 'UNC', 0.5, 13],
    ['1/2-20', 'UNF', 0.5, 20],
    ['9/16-12', 'UNC', 0.5625, 12],
    ['9/16-18', 'UNF', 0.5625, 18],
    ['5/8-11', 'UNC', 0.625, 11],
    ['5/8-18', 'UNF', 0.625, 18],
    ['3/4-10', 'UNC', 0.75, 10],
    ['3/4-16', 'UNF', 0.75, 16],
    ['7/8-9', 'UNC', 0.875, 9],
    ['1-8', 'UNC', 1, 8],
    ['1-12', 'UNF', 1, 12],
    ['1-1/8-7', 'UNC', 1.125, 7],
    ['1-1/4-7', 'UNC', 1.25, 7],
    ['1-1/2-6', 'UNC', 1.5, 6],
  ])('%s %s: %f in', (name, series, majorInch, perInch) => {
    const read = thread(name);
    expect(read.majorMm).toBeCloseTo(majorInch * 25.4, 10);
    expect(read.pitchMm).toBeCloseTo(25.4 / perInch, 10);
    expect(read.series).toBe(series);
  });

  /** Source: ASME B1.1, number size N is 0.060 + 0.013 N in. */
  test.each([0, 1, 2, 3, 4, 5, 6, 8, 10, 12])('number %i', (number) => {
    expect(thread(`#${number}-50`).majorMm / 25.4).toBeCloseTo(0.06 + 0.013 * number, 12);
  });
});

/** Source: coarse pitches of ISO 261, read on the metric thread pitch chart of mlc.org.uk. */
test.each<[string, number, number]>([
  ['M1.6', 1.6, 0.35],
  ['M2', 2, 0.4],
  ['M2.5', 2.5, 0.45],
  ['M3', 3, 0.5],
  ['M4', 4, 0.7],
  ['M5', 5, 0.8],
  ['M6', 6, 1],
  ['M8', 8, 1.25],
  ['M10', 10, 1.5],
  ['M12', 12, 1.75],
  ['M14', 14, 2],
  ['M16', 16, 2],
  ['M18', 18, 2.5],
  ['M20', 20, 2.5],
  ['M22', 22, 2.5],
  ['M24', 24, 3],
  ['M27', 27, 3],
  ['M30', 30, 3.5],
  ['M33', 33, 3.5],
  ['M36', 36, 4],
  ['M39', 39, 4],
  ['M42', 42, 4.5],
  ['M45', 45, 4.5],
  ['M48', 48, 5],
  ['M52', 52, 5],
  ['M56', 56, 5.5],
  ['M60', 60, 5.5],
  ['M64', 64, 6],
])('%s has a coarse pitch', (name, diameter, pitch) => {
  expect(thread(name)).toMatchObject({ majorMm: diameter, pitchMm: pitch });
});

/**
 * Source: ISO 286-1 table 1, widths in micrometres of IT5 to IT11 for the steps up to 3, 6, 10, 18, 30, 50, 80, 120, 180,
 * 250, 315, 400 and 500 mm, read at mechguru.com (standard tolerance zone sizes).
 */
const steps = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];
const micrometres: Readonly<Record<(typeof toleranceGrades)[number], readonly number[]>> = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
};

test.each(toleranceGrades)('IT%i', (grade) => {
  expect(steps.map((size) => Math.round(gradeWidth(grade, size)!.widthMm * 1000))).toEqual(micrometres[grade]);
});

/** Source: formula of ISO 286-1 annex A, i = 0.45 D^(1/3) + 0.001 D and IT7 = 16 i; the standard rounds its cells. */
test('IT7 follows the tolerance factor of the standard', () => {
  steps.slice(1).forEach((upTo, i) => {
    const mean = Math.sqrt(steps[i]! * upTo);
    const factor = 0.45 * Math.cbrt(mean) + 0.001 * mean;
    const width = gradeWidth(7, upTo)!.widthMm * 1000;
    expect(Math.abs(width / (16 * factor) - 1), `${upTo} mm`).toBeLessThan(0.09);
  });
});
