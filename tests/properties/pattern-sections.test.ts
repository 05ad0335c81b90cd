import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawAsCorrected } from '../../resources/examples/source/draw.ts';
import { dimensionsOf, operationsOf, partsOf } from '../../src/shared/build/look-up.ts';
import { type Axis, axes } from '../../src/shared/build/station.ts';
import { glueOrder } from '../../src/shared/pattern/joints.ts';
import { makePattern } from '../../src/shared/pattern/make-pattern.ts';
import { checkPattern, planPattern } from '../../src/shared/pattern/pattern-check.ts';
import { regionArea } from '../../src/shared/solid/flat-region.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { alloyNamed } from '../../src/shared/tables/alloys.ts';
import { castingOf, patternPart } from '../support/pattern-part.ts';
import { block, cone, cylinder, type HandMade, placedBodies } from '../support/placed-bodies.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const boards = [
  { index: 0, name: '50', thicknessMm: 50, lengthMm: 1200, widthMm: 600, count: 9 },
  { index: 1, name: '25', thicknessMm: 25, lengthMm: 1200, widthMm: 600, count: 9 },
];

describe('the sections of the filing machine’s castings', () => {
  const build = drawAsCorrected();
  const cast = partsOf(build).filter(({ make }) => make === 'cast');
  test('there are castings', () => {
    expect(cast.length).toBeGreaterThan(5);
  });
  test.each(cast.flatMap(({ id, name }) => axes.map((axis) => [name, axis, id] as const)))(
    '%s along %s add up to the pattern',
    (_, axis, id) => {
      const part = patternPart(build.values(), id);
      const material = partsOf(build).find((one) => one.id === id)!.material;
      const stocked = [
        { name: 'thick', thickness: '50', length: '1200', width: '600', count: 9 },
        { name: 'thin', thickness: '25', length: '1200', width: '600', count: 9 },
      ];
      const plan = planPattern({
        casting: castingOf(id, { sectionAxis: axis, boards: stocked, glueJoint: '0.2', up: '+Z' }),
        part: id,
        material,
        alloy: alloyNamed(material),
        bodies: part.bodies,
        dimensions: dimensionsOf(build, id),
        operations: operationsOf(build, id),
        numbers: part.numbers,
        lengthUnit: 'mm',
        castingGrade: 11,
        machines: [],
        patterns: [],
        measuredHere: [],
        measuredBefore: [],
        margins: [],
      });
      const before = kernel.live;
      const made = makePattern(kernel, plan.order);
      expect(kernel.live).toBe(before);
      expect(made.refused).toEqual([]);
      expect(Math.abs(made.addsUpTo! - 1)).toBeLessThan(0.0005);
      // The templates' pattern is the casting's by its contraction, facets and all within the same half of a percent.
      const sum = made.sections.reduce((total, { volumeMm3 }) => total + volumeMm3, made.glueMm3);
      expect(Math.abs(sum / made.pattern!.volumeMm3 - 1)).toBeLessThan(0.005);
      const [x, y, z] = plan.factors!;
      expect(made.pattern!.volumeMm3).toBeCloseTo(made.casting!.volumeMm3 * x * y * z, 3);
      for (const { wireMm3, volumeMm3, low, high, cut, lower } of made.sections) {
        expect(high - low).toBeLessThanOrEqual(50 + 1e-6);
        // A wire takes no more than it may: what it leaves is at least the section.
        expect(wireMm3).toBeGreaterThan(volumeMm3 * 0.985);
        if (cut === 'straight') expect(regionArea(lower) * (high - low)).toBeCloseTo(volumeMm3, -3);
      }
      // All that touches is glued; pieces hang together as the pattern does.
      expect(glueOrder(made.sections, made.joints).loose).toEqual([]);
      const check = checkPattern(plan, made);
      expect(check.nesting!.short).toEqual([]);
      expect(check.nesting!.tooLarge).toEqual([]);
      const laid = check.nesting!.boards.flatMap((board) => board.laid.map(({ section }) => section));
      expect(laid.sort()).toEqual(made.sections.map(({ name }) => name).sort());
    },
    60_000,
  );
});

const place = fc.integer({ min: -60, max: 60 });
const size = fc.integer({ min: 4, max: 90 });
const axis = fc.constantFrom<Axis>('X', 'Y', 'Z');
const shape = fc.oneof(
  fc
    .tuple(place, size, place, size, place, size)
    .map(([x, dx, y, dy, z, dz]) => block([x, x + dx], [y, y + dy], [z, z + dz])),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => cylinder(a, [u, v], [z, z + d], r / 2)),
  fc
    .tuple(axis, place, place, place, size, size, fc.integer({ min: 0, max: 40 }))
    .map(([a, u, v, z, d, r, s]) => cone(a, [u, v], [z, z + d], [r / 2, s])),
);
const bodies: fc.Arbitrary<readonly HandMade[]> = fc.array(fc.record({ shape, adds: fc.boolean() }), {
  minLength: 1,
  maxLength: 7,
});

test('the sections of any solid and their joints add up to it, along any axis, with any boards', () => {
  fc.assert(
    fc.property(bodies, axis, fc.constantFrom(0, 0.3), fc.constantFrom(12, 25, 50), (list, along, glueMm, board) => {
      const pieces = placedBodies(list).map(({ record, shape: placed, moves }) => ({
        key: record.id,
        name: record.id,
        body: record.id,
        is: 'body' as const,
        adds: record.adds,
        cored: false,
        shape: placed!,
        moves,
        taper: undefined,
      }));
      const order = {
        casting: pieces,
        pattern: pieces,
        factors: [1.013, 1.013, 1.02] as const,
        cut: { axis: along, boards: [{ ...boards[0]!, thicknessMm: board }], glueMm, kerfMm: 1, leastMm: 5 },
      };
      const before = kernel.live;
      const made = makePattern(kernel, order);
      expect(kernel.live).toBe(before);
      if (!made.pattern || made.pattern.volumeMm3 < 1000) return;
      expect(Math.abs(made.addsUpTo! - 1)).toBeLessThan(0.003);
      for (const { volumeMm3, wireMm3, high, low } of made.sections) {
        expect(high - low).toBeLessThanOrEqual(board + 1e-6);
        expect(wireMm3).toBeGreaterThan(volumeMm3 * 0.985);
      }
    }),
    { numRuns: 60 },
  );
}, 120_000);
