import { describe, expect, test } from 'vitest';
import { basicThread } from './threads-basic.ts';
import { knownThread, knownThreads, nearestThreads, threadsLike } from './threads-known.ts';

describe('basic sizes', () => {
  test.each(['metric', 'unified', 'trapezoidal', 'whitworth'] as const)('%s: the diameters follow in order', (form) => {
    for (const [major, pitch] of [
      [10, 1.5],
      [50, 8],
      [6, 1],
    ] as const) {
      const { pitchDiameterMm, minorNutMm, minorScrewMm, stressAreaMm2 } = basicThread(form, major, pitch);
      expect(pitchDiameterMm).toBeLessThan(major);
      expect(minorNutMm).toBeLessThan(pitchDiameterMm);
      expect(minorScrewMm).toBeLessThanOrEqual(minorNutMm);
      expect(stressAreaMm2).toBeGreaterThan((Math.PI / 4) * minorScrewMm ** 2);
      expect(stressAreaMm2).toBeLessThan((Math.PI / 4) * pitchDiameterMm ** 2);
    }
  });

  test('a thread scaled is the thread of the scaled sizes', () => {
    for (const form of ['metric', 'unified', 'whitworth'] as const) {
      const one = basicThread(form, 8, 1.25);
      const two = basicThread(form, 16, 2.5);
      expect(two.pitchDiameterMm).toBeCloseTo(2 * one.pitchDiameterMm, 12);
      expect(two.minorScrewMm).toBeCloseTo(2 * one.minorScrewMm, 12);
      expect(two.stressAreaMm2).toBeCloseTo(4 * one.stressAreaMm2, 10);
    }
  });

  test('what is from memory says so', () => {
    expect(basicThread('metric', 8, 1.25).status).toBe('read');
    for (const form of ['trapezoidal', 'whitworth'] as const) {
      expect(basicThread(form, 20, 4)).toMatchObject({ status: 'from memory' });
      expect(basicThread(form, 20, 4).source).toContain('(from memory)');
    }
  });
});

describe('listed threads', () => {
  test('each has its own name and is found by its sizes', () => {
    expect(new Set(knownThreads.map(({ name }) => name)).size).toBe(knownThreads.length);
    expect(knownThreads.length).toBeGreaterThan(150);
    for (const thread of knownThreads) {
      expect(knownThread(thread.form, thread.majorMm, thread.pitchMm)).toBe(thread);
    }
    expect(knownThread('metric', 8, 0.9)).toBeUndefined();
    expect(knownThread('metric', 6.35, 1.27)).toBeUndefined();
  });

  test('pitches from memory say so', () => {
    const status = (name: string) => knownThreads.find((thread) => thread.name === name)?.status;
    expect(['M8', 'M8x1', 'M14x1', 'M24x2', '1/4-20', '1-3/8-6'].map(status)).toEqual([
      'read',
      'read',
      'from memory',
      'from memory',
      'read',
      'from memory',
    ]);
  });

  test.each<[number, number | undefined, readonly string[]]>([
    [13, undefined, ['M12', 'M14', 'M11']],
    [8, 0.9, ['M8x1', 'M8x0.75', 'M8']],
    [8, undefined, ['M8', 'M8x1', 'M8x0.75']],
    [200, undefined, ['M64', 'M60', 'M56']],
  ])('near M%f and pitch %s', (major, pitch, names) => {
    expect(nearestThreads('metric', major, pitch).map(({ name }) => name)).toEqual(names);
  });
});

test.each<[string, readonly string[]]>([
  ['M13', ['M12', 'M14', 'M11']],
  ['M8 fine', ['M8', 'M8x1', 'M8x0.75']],
  ['m8x9', ['M8', 'M8x1', 'M8x0.75']],
  ['1/4', ['1/4-20', '1/4-28']],
  ['1/4-22', ['1/4-20', '1/4-28']],
  ['1-1/8', ['1-1/8-7', '1-1/8-12']],
  ['1 1/8', ['1-1/8-7', '1-1/8-12']],
  ['#7-32', ['#6-32', '#8-32', '#8-36']],
  ['1', ['1-8', '1-12']],
  ['1-70', ['#1-72', '#1-64']],
  ['0.26-20', ['1/4-20', '1/4-28', '#12-24']],
  ['1/0-20', []],
  ['stud', []],
  ['', []],
])('%s may mean %j', (text, names) => {
  expect(threadsLike(text).map(({ name }) => name)).toEqual(names);
});
