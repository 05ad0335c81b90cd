import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CutsGiven, chooseCuts } from './choose-cuts.ts';

const given: CutsGiven = { low: 0, high: 100, steps: [], thicknesses: [50, 25], glueMm: 0, leastMm: 5 };
const cuts = (over: Partial<CutsGiven>) => chooseCuts({ ...given, ...over }).map(({ low, high }) => [low, high]);

describe('where a pattern is cut', () => {
  test('into whole boards', () => {
    expect(cuts({})).toEqual([
      [0, 50],
      [50, 100],
    ]);
  });
  test('glue takes its part of the height', () => {
    expect(cuts({ glueMm: 0.4, high: 100.4 })).toEqual([
      [0, 50],
      [50.4, 100.4],
    ]);
  });
  test('at the steps before all', () => {
    const steps = [
      { at: 12, areaMm2: 900 },
      { at: 88, areaMm2: 700 },
    ];
    expect(cuts({ steps })).toEqual([
      [0, 12],
      [12, 62],
      [62, 88],
      [88, 100],
    ]);
  });
  test('a step that would leave a section too thin is carved', () => {
    expect(cuts({ high: 50, steps: [{ at: 2, areaMm2: 900 }] })).toEqual([[0, 50]]);
  });
  test('a step that is small beside the others is not worth a joint', () => {
    const steps = [
      { at: 20, areaMm2: 2000 },
      { at: 40, areaMm2: 20 },
    ];
    expect(cuts({ high: 60, steps })).toEqual([
      [0, 20],
      [20, 60],
    ]);
  });
  test('faces in one plane but for rounding are one', () => {
    const steps = [
      { at: 20, areaMm2: 10 },
      { at: 20.001, areaMm2: 500 },
    ];
    expect(cuts({ high: 60, steps })).toEqual([
      [0, 20.001],
      [20.001, 60],
    ]);
  });
  test('a remainder too thin to handle takes some of the board before it', () => {
    expect(cuts({ high: 52 })).toEqual([
      [0, 47],
      [47, 52],
    ]);
  });
  test('thinner than the least is cut all the same where nothing else is left', () => {
    expect(cuts({ high: 3 })).toEqual([[0, 3]]);
  });
  test('without boards nothing is cut', () => {
    expect(cuts({ thicknesses: [] })).toEqual([]);
  });
});

test('sections and joints make up the height, and no section is thicker than the thickest board', () => {
  const mm = (max: number) => fc.integer({ min: 1, max: max * 10 }).map((n) => n / 10);
  fc.assert(
    fc.property(
      mm(400),
      fc.array(fc.record({ at: mm(400), areaMm2: mm(5000) }), { maxLength: 12 }),
      fc.array(mm(120), { minLength: 1, maxLength: 4 }),
      fc.constantFrom(0, 0.2, 0.5),
      (high, steps, thicknesses, glueMm) => {
        const thickest = Math.max(...thicknesses);
        fc.pre(thickest > 6);
        const layers = chooseCuts({ low: 0, high, steps, thicknesses, glueMm, leastMm: 5 });
        const foam = layers.reduce((sum, layer) => sum + layer.high - layer.low, 0);
        expect(layers[0]!.low).toBe(0);
        expect(layers.at(-1)!.high).toBe(high);
        expect(foam + (layers.length - 1) * glueMm).toBeCloseTo(high, 6);
        layers.forEach((layer, i) => {
          expect(layer.high - layer.low).toBeLessThanOrEqual(thickest + 1e-6);
          expect(layer.high).toBeGreaterThan(layer.low);
          if (i > 0) expect(layer.low - layers[i - 1]!.high).toBeCloseTo(glueMm, 6);
        });
      },
    ),
  );
});
