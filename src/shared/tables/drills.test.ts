import { describe, expect, test } from 'vitest';
import { drillCalled, drillNamed, drillSeries, drills, nearestDrills } from './drills.ts';

const names = (series: (typeof drillSeries)[number], diameterMm: number) =>
  nearestDrills(series, diameterMm).map(({ name }) => name);

test.each(drillSeries)('%s drills grow from one to the next, each with a name of its own', (series) => {
  const sizes = drills[series].map(({ diameterMm }) => diameterMm);
  expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
  expect(new Set(sizes).size).toBe(sizes.length);
  for (const drill of drills[series]) {
    expect(drill.series).toBe(series);
    expect(drillCalled(drill.name)).toBe(drill);
  }
});

test('a name that no drill has', () => {
  for (const name of ['No 81', 'AA', '6.85 mm', '']) expect(drillCalled(name)).toBeUndefined();
});

test('what is from memory says so', () => {
  expect(drillCalled('25.75 mm')?.status).toBe('read');
  expect(drillCalled('26 mm')).toMatchObject({ status: 'from memory' });
  expect(drillCalled('26 mm')?.source).toMatch(/\(from memory\)$/);
});

describe('nearest drills', () => {
  test('the size itself alone', () => {
    expect(names('metric', 8.5)).toEqual(['8.5 mm']);
    expect(names('fraction', 6.35)).toEqual(['1/4 in']);
    expect(names('letter', 6.35)).toEqual(['E']);
    expect(names('number', 0.201 * 25.4)).toEqual(['No 7']);
  });

  test('the neighbours on both sides, nearest first', () => {
    expect(names('metric', 8.52)).toEqual(['8.5 mm', '8.6 mm']);
    expect(names('metric', 8.58)).toEqual(['8.6 mm', '8.5 mm']);
    expect(names('number', 5)).toEqual(['No 9', 'No 8']);
    expect(names('letter', 8.5)).toEqual(['Q', 'R']);
    expect(names('fraction', 8.5)).toEqual(['21/64 in', '11/32 in']);
  });

  test('halfway the thicker comes first', () => {
    expect(names('metric', 6.75)).toEqual(['6.8 mm', '6.7 mm']);
    expect(names('metric', 10.25)).toEqual(['10.3 mm', '10.2 mm']);
  });

  test('beyond the ends only what is near', () => {
    expect(names('letter', 10.5)).toEqual(['Z']);
    expect(names('letter', 12)).toEqual([]);
    expect(names('letter', 5.9)).toEqual(['A']);
    expect(names('letter', 5)).toEqual([]);
    expect(names('metric', 101)).toEqual(['100 mm']);
    expect(names('metric', 0.05)).toEqual([]);
  });
});

test.each<[string, string | number | undefined]>([
  ['No 7', 'No 7'],
  ['no. 7', 'No 7'],
  ['#7', 'No 7'],
  ['number 80', 'No 80'],
  ['No 81', 81],
  ['No 0', 0],
  ['f', 'F'],
  ['letter z', 'Z'],
  ['7', undefined],
  ['21/64', undefined],
  ['FF', undefined],
  ['', undefined],
])('%s names %s', (text, expected) => {
  const named = drillNamed(text);
  expect(named === undefined ? undefined : 'drill' in named ? named.drill.name : named.unknownNumber).toBe(expected);
});
