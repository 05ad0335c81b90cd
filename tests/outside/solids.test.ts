import { beforeAll, describe, expect, test } from 'vitest';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { solidOf } from '../support/placed-bodies.ts';
import { openCascade, type Truth } from './open-cascade.ts';
import { cases, crossing } from './solids-cases.ts';

let kernel: Kernel;
let truthOf: (bodies: (typeof cases)[number]['bodies']) => Truth;
beforeAll(async () => {
  kernel = await loadKernel();
  truthOf = await openCascade();
}, 120_000);

/** One part in a million. */
const PPM = 1e-6;

describe.each(cases)('$name', ({ bodies, exact }) => {
  test('agrees with the formula and with Open CASCADE', () => {
    const { solid } = solidOf(kernel, bodies);
    const truth = truthOf(bodies);
    const found = solid!.finished;
    const size = Math.cbrt(truth.volumeMm3);
    if (exact !== undefined) expect(Math.abs(found.volumeMm3 / exact - 1)).toBeLessThan(PPM);
    expect(Math.abs(found.volumeMm3 / truth.volumeMm3 - 1)).toBeLessThan(PPM);
    expect(Math.abs(found.areaMm2 / truth.areaMm2 - 1)).toBeLessThan(20 * PPM);
    for (const k of [0, 1, 2] as const) {
      expect(Math.abs(found.centre[k] - truth.centre[k]) / size).toBeLessThan(PPM);
      expect(Math.abs(found.inertia[k] / truth.inertia[k] - 1)).toBeLessThan(2 * PPM);
    }
    expect(found.pieces).toBe(1);
  });
});

test('the formula of crossing bars agrees with a plain sum', () => {
  // Midpoint sum over the height of the narrow bar: 4 √(R² − z²) √(r² − z²) dz is the area at z.
  const [R, r, n] = [20, 8, 400_000];
  let sum = 0;
  for (let i = 0; i < n; i++) {
    // z = r sin t makes the ends smooth.
    const t = ((i + 0.5) / n - 0.5) * Math.PI;
    const z = r * Math.sin(t);
    sum += 4 * Math.sqrt(R * R - z * z) * (r * Math.cos(t)) ** 2 * (Math.PI / n);
  }
  expect(crossing(R, r) / sum).toBeCloseTo(1, 9);
});
