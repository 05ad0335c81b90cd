import { describe, expect, test } from 'vitest';
import { drillCalled, drills } from '../../src/shared/tables/drills.ts';

const inchesOf = (name: string): number => {
  const drill = drillCalled(name);
  if (drill === undefined) throw new Error(name);
  return drill.diameterMm / 25.4;
};

/** Source: GNU Units 2.22, definitions.units, drillgauge: No 1 to No 80 in inches. */
// biome-ignore format: ten to a line reads like the table
const numbers: readonly number[] = [
  0.228, 0.221, 0.213, 0.209, 0.2055, 0.204, 0.201, 0.199, 0.196, 0.1935, 0.191, 0.189, 0.185, 0.182, 0.18, 0.177,
  0.173, 0.1695, 0.166, 0.161, 0.159, 0.157, 0.154, 0.152, 0.1495, 0.147, 0.144, 0.1405, 0.136, 0.1285, 0.12,
  0.116, 0.113, 0.111, 0.11, 0.1065, 0.104, 0.1015, 0.0995, 0.098, 0.096, 0.0935, 0.089, 0.086, 0.082, 0.081,
  0.0785, 0.076, 0.073, 0.07, 0.067, 0.0635, 0.0595, 0.055, 0.052, 0.0465, 0.043, 0.042, 0.041, 0.04, 0.039, 0.038,
  0.037, 0.036, 0.035, 0.033, 0.032, 0.031, 0.0292, 0.028, 0.026, 0.025, 0.024, 0.0225, 0.021, 0.02, 0.018, 0.016,
  0.0145, 0.0135,
];

/** Source: GNU Units 2.22, definitions.units, drillA to drillZ, in inches. */
// biome-ignore format: a short table
const letters: readonly number[] = [
  0.234, 0.238, 0.242, 0.246, 0.25, 0.257, 0.261, 0.266, 0.272, 0.277, 0.281, 0.29, 0.295, 0.302, 0.316, 0.323,
  0.332, 0.339, 0.348, 0.358, 0.368, 0.377, 0.386, 0.397, 0.404, 0.413,
];

test('number drills', () => {
  expect(numbers).toHaveLength(80);
  numbers.forEach((inches, i) => {
    expect(inchesOf(`No ${i + 1}`), `No ${i + 1}`).toBeCloseTo(inches, 10);
  });
  expect(drills.number).toHaveLength(80);
});

test('letter drills', () => {
  expect(letters).toHaveLength(26);
  letters.forEach((inches, i) => {
    const name = String.fromCharCode(65 + i);
    expect(inchesOf(name), name).toBeCloseTo(inches, 10);
  });
  expect(drills.letter).toHaveLength(26);
});

/** Source: decimal equivalents on the tap and clearance hole chart of manufacturinget.org (2012), an independent copy. */
test.each<[string, number]>([
  ['No 55', 0.052],
  ['No 53', 0.0595],
  ['No 52', 0.0635],
  ['No 50', 0.07],
  ['No 49', 0.073],
  ['No 48', 0.076],
  ['No 47', 0.0785],
  ['No 46', 0.081],
  ['No 45', 0.082],
  ['No 44', 0.086],
  ['No 43', 0.089],
  ['No 42', 0.0935],
  ['No 41', 0.096],
  ['No 40', 0.098],
  ['No 38', 0.1015],
  ['No 37', 0.104],
  ['No 36', 0.1065],
  ['No 35', 0.11],
  ['No 32', 0.116],
  ['No 30', 0.1285],
  ['No 29', 0.136],
  ['No 27', 0.144],
  ['No 26', 0.147],
  ['No 25', 0.1495],
  ['No 21', 0.159],
  ['No 20', 0.161],
  ['No 18', 0.1695],
  ['No 16', 0.177],
  ['No 14', 0.182],
  ['No 13', 0.185],
  ['No 12', 0.189],
  ['No 10', 0.1935],
  ['No 9', 0.196],
  ['No 7', 0.201],
  ['No 3', 0.213],
  ['No 2', 0.221],
  ['No 1', 0.228],
  ['F', 0.257],
  ['H', 0.266],
  ['I', 0.272],
  ['J', 0.277],
  ['L', 0.29],
  ['P', 0.323],
  ['Q', 0.332],
  ['S', 0.348],
  ['T', 0.358],
  ['W', 0.386],
  ['X', 0.397],
])('%s is %f in', (name, inches) => {
  expect(inchesOf(name)).toBeCloseTo(inches, 10);
});

/** Source: a fraction of an inch of 25.4 mm exactly, multiplied out by hand. */
test.each<[string, number]>([
  ['1/64 in', 0.396875],
  ['17/64 in', 6.746875],
  ['21/64 in', 8.334375],
  ['1/2 in', 12.7],
  ['1 in', 25.4],
  ['1-3/64 in', 26.590625],
  ['1-1/2 in', 38.1],
])('%s is %f mm', (name, mm) => {
  expect(drillCalled(name)?.diameterMm).toBe(mm);
});

/** Source: BS 328 as told by an encyclopedia's article on drill bit sizes: the rule of its steps, and their number, 230. */
describe('metric drills', () => {
  const listed = drills.metric.filter(({ source }) => source.startsWith('BS 328')).map(({ diameterMm }) => diameterMm);

  test('there are 230 of them', () => {
    expect(listed).toHaveLength(230);
  });

  test.each([0.2, 0.22, 0.25, 0.28, 0.98, 1, 1.05, 2.95, 3, 3.1, 13.9, 14, 14.25, 24.75, 25])(
    '%f mm is one',
    (size) => {
      expect(listed).toContain(size);
    },
  );

  test.each([0.21, 0.27, 1.02, 2.97, 3.05, 13.95, 14.1, 24.9])('%f mm is none', (size) => {
    expect(listed).not.toContain(size);
  });
});
