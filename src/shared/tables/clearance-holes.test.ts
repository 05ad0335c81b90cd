import { expect, test } from 'vitest';
import { inchClearance, metricClearance } from './clearance-holes.ts';
import { drillCalled } from './drills.ts';
import { knownThreads } from './threads-known.ts';

test('holes are wider than the screw and widen from fit to fit; their drills exist', () => {
  let rows = 0;
  for (const { name, form, majorMm } of knownThreads) {
    const holes = form === 'metric' ? metricClearance(majorMm) : inchClearance(majorMm);
    const diameters = [majorMm, ...holes.map(({ diameterMm }) => diameterMm)];
    expect(diameters, name).toEqual([...diameters].sort((a, b) => a - b));
    expect(new Set(diameters).size, name).toBe(diameters.length);
    for (const { drill, diameterMm } of holes)
      expect(drillCalled(drill)?.diameterMm, `${name} ${drill}`).toBe(diameterMm);
    rows += holes.length;
  }
  expect(rows).toBeGreaterThan(300);
});

test('the hole grows with the screw, fit by fit', () => {
  const sizes = [...new Set(knownThreads.map(({ majorMm }) => majorMm))].sort((a, b) => a - b);
  for (const clearance of [metricClearance, inchClearance]) {
    for (let fit = 0; fit < 3; fit++) {
      const column = sizes.map((size) => clearance(size)[fit]?.diameterMm).filter((value) => value !== undefined);
      expect(column.length).toBeGreaterThan(20);
      expect(column).toEqual([...column].sort((a, b) => a - b));
    }
  }
});

test('source and status go with each hole', () => {
  expect(metricClearance(8)[1]).toEqual({
    fit: 'medium',
    diameterMm: 9,
    drill: '9 mm',
    source: 'ISO 273:1979',
    status: 'read',
  });
  expect(metricClearance(20)[0]?.status).toBe('from memory');
  expect(metricClearance(4.5)[0]?.status).toBe('from memory');
  expect(inchClearance(6.35)[0]).toEqual({
    fit: 'close',
    diameterMm: 6.746875,
    drill: '17/64 in',
    source: 'ASME B18.2.8-1999',
    status: 'read',
  });
  expect(inchClearance(0.06 * 25.4).map(({ status }) => status)).toEqual(['from memory', 'read', 'read']);
});

test('a size that the standard does not list has none', () => {
  expect(metricClearance(13)).toEqual([]);
  expect(metricClearance(Number.NaN)).toEqual([]);
  expect(inchClearance(0.216 * 25.4)).toEqual([]);
});
