import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { type BenchBody, bedPlate, edited, PART, placedOf } from '../../bench/solids-part.ts';
import { createSolids } from '../../src/shared/solid/create-solids.ts';
import { createLivePart, type LivePart } from '../../src/shared/solid/live/live-part.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { turnAbout } from '../../src/shared/solid/moves.ts';
import { runsOf } from '../../src/shared/solid/order.ts';
import type { ExactShape, MassProperties, PartMesh, PlacedBody } from '../../src/shared/solid/placed.ts';
import { block, cone, cylinder, type HandMade, placedBodies, THE_PART } from '../support/placed-bodies.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const place = fc.integer({ min: -100, max: 100 });
const size = fc.integer({ min: 4, max: 90 });
const axis = fc.constantFrom('X' as const, 'Y' as const, 'Z' as const);
const shape = fc.oneof(
  fc
    .tuple(place, size, place, size, place, size)
    .map(([x, dx, y, dy, z, dz]) => block([x, x + dx], [y, y + dy], [z, z + dz])),
  fc.tuple(axis, place, place, place, size, size).map(([a, u, v, z, d, r]) => cylinder(a, [u, v], [z, z + d], r / 2)),
  fc
    .tuple(axis, place, place, place, size, size, fc.integer({ min: 0, max: 30 }))
    .map(([a, u, v, z, d, r, s]) => cone(a, [u, v], [z, z + d], [r / 2, s])),
);
const body: fc.Arbitrary<HandMade> = fc.record({
  shape,
  adds: fc.boolean(),
  finish: fc.constantFrom('as cast' as const, 'cored' as const, 'machined' as const),
});
/** Enough of them for several cells. */
const bodies = fc.array(body, { minLength: 8, maxLength: 22 });

function both(list: readonly PlacedBody[]) {
  const solids = createSolids({ parts: () => [THE_PART], bodiesOf: () => list }, () => kernel);
  solids.computeLive(THE_PART);
  const live = solids.figuresOf(THE_PART);
  const shown = solids.liveMeshOf(THE_PART, 'finished');
  expect(live?.level ?? 'live').toBe('live');
  solids.compute(THE_PART);
  const measured = solids.solidOf(THE_PART);
  solids.drop();
  return { live, measured, shown };
}

function expectNear(live: MassProperties, measured: MassProperties, partsPerMillion: number) {
  const share = partsPerMillion * 1e-6;
  expect(Math.abs(live.volumeMm3 / measured.volumeMm3 - 1)).toBeLessThan(share);
  // Where round faces meet at a sharp angle their border is less certain than what they enclose.
  expect(Math.abs(live.areaMm2 / measured.areaMm2 - 1)).toBeLessThan(15 * share);
  const largest = Math.max(...[0, 1, 2].map((k) => measured.boxMax[k]! - measured.boxMin[k]!));
  for (const k of [0, 1, 2] as const) {
    expect(Math.abs(live.centre[k] - measured.centre[k])).toBeLessThan(share * largest);
    expect(Math.abs(live.inertia[k] / measured.inertia[k] - 1)).toBeLessThan(2 * share);
    // A round body cut by another may end between two corners of its facets.
    expect(Math.abs(live.boxMin[k] - measured.boxMin[k])).toBeLessThan(0.3);
    expect(Math.abs(live.boxMax[k] - measured.boxMax[k])).toBeLessThan(0.3);
  }
}

/** What a surface encloses, in mm³, worked out from a point: the same from every point where nothing is missing of it. */
function enclosedFrom(point: readonly [number, number, number], { vertices, triangles }: PartMesh): number {
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const at = 3 * triangles[t + k]!;
      return [0, 1, 2].map((n) => vertices[at + n]! - point[n]!) as [number, number, number];
    }) as [[number, number, number], [number, number, number], [number, number, number]];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** The kernel, with a count of the cells that it cut anew. */
function countingCuts() {
  let total = 0;
  return {
    kernel: {
      ...kernel,
      get live() {
        return kernel.live;
      },
      meshOf: (solid) => {
        total++;
        return kernel.meshOf(solid);
      },
    } satisfies Kernel,
    total: () => total,
  };
}

/** One side of a block, one end of a round body, or its radius moved by so much; never inside out. */
function nudged(shape: ExactShape, side: number, by: number): ExactShape {
  if (shape.is === 'turned') {
    const [low, high] = [Math.min(...shape.outline.map(({ a }) => a)), Math.max(...shape.outline.map(({ a }) => a))];
    const radius = Math.max(...shape.outline.map(({ r }) => r));
    const outline = shape.outline.map(({ a, r }) => {
      if (side % 3 === 0) return { a, r: r === radius && radius + by > 1 ? r + by : r };
      const [end, other] = side % 3 === 1 ? [low, high] : [high, low];
      return { a: a === end && (end + by - other) * (end - other) > Math.abs(end - other) ? a + by : a, r };
    });
    return { ...shape, outline };
  }
  if (shape.is !== 'extrusion') return shape;
  if (side < 2) {
    const [a0, a1] = side === 0 ? [shape.a0 + by, shape.a1] : [shape.a0, shape.a1 + by];
    return a1 - a0 > 1 ? { ...shape, a0, a1 } : shape;
  }
  const axis = side < 4 ? 'u' : 'v';
  const places = shape.outline.map((point) => point[axis]);
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const end = side % 2 === 0 ? low : high;
  const far = side % 2 === 0 ? high - (low + by) : high + by - low;
  if (far <= 1) return shape;
  return {
    ...shape,
    outline: shape.outline.map((point) => (point[axis] === end ? { ...point, [axis]: end + by } : point)),
  };
}

/** The same but for the rounding of meshes to 24 bits. */
function expectClose(part: LivePart, fresh: LivePart) {
  expect(part.figures === undefined).toBe(fresh.figures === undefined);
  if (!part.figures || !fresh.figures) return;
  for (const state of ['finished', 'asCast'] as const) {
    const [one, other] = [part.figures[state], fresh.figures[state]];
    expect(one.pieces).toBe(other.pieces);
    expect(Math.abs(one.volumeMm3 - other.volumeMm3)).toBeLessThan(1e-6 * other.volumeMm3 + 1e-3);
    expect(Math.abs(one.areaMm2 - other.areaMm2)).toBeLessThan(1e-5 * other.areaMm2 + 1e-2);
    for (const k of [0, 1, 2] as const) {
      expect(Math.abs(one.centre[k] - other.centre[k])).toBeLessThan(1e-4);
      expect(Math.abs(one.inertia[k] / other.inertia[k] - 1)).toBeLessThan(1e-5);
      expect(Math.abs(one.boxMin[k] - other.boxMin[k])).toBeLessThan(2e-5);
      expect(Math.abs(one.boxMax[k] - other.boxMax[k])).toBeLessThan(2e-5);
    }
  }
}

describe('live figures', () => {
  test('of random bodies are near the measured ones, in both states, with the same number of pieces', () => {
    fc.assert(
      fc.property(bodies, (list) => {
        const { live, measured } = both(placedBodies(list));
        if (!measured || measured.finished.volumeMm3 < 100 || measured.asCast.volumeMm3 < 100) return;
        expect(live).toBeDefined();
        expect(live!.finished.pieces).toBe(measured.finished.pieces);
        expect(live!.asCast.pieces).toBe(measured.asCast.pieces);
        expectNear(live!.finished, measured.finished, 100);
        expectNear(live!.asCast, measured.asCast, 100);
      }),
      { numRuns: 20, seed: 20261125 },
    );
  });

  test('of a part of drilled bosses are within 5 ppm of the measured ones; nothing is missing of what is shown', () => {
    const list = placedOf(bedPlate(50));
    const { live, measured, shown } = both(list);
    expect(Math.abs(live!.finished.volumeMm3 / measured!.finished.volumeMm3 - 1)).toBeLessThan(5e-6);
    expect(live!.finished.pieces).toBe(1);
    expect(live!.finished.boxMin).toEqual(measured!.finished.boxMin);
    expect(live!.finished.boxMax).toEqual(measured!.finished.boxMax);
    expect(new Set(shown!.bodyOf)).toEqual(new Set(list.map((_, i) => i)));
    const enclosed = enclosedFrom([0, 0, 0], shown!);
    expect(enclosedFrom([5000, -3000, 2000], shown!) / enclosed).toBeCloseTo(1, 4);
    // Flat facets of 16 to 32 a turn: bosses hold less, holes more.
    expect(Math.abs(enclosed / measured!.finished.volumeMm3 - 1)).toBeLessThan(0.01);
  });

  test('after any edits are those of a fresh computation, and no memory is lost', () => {
    fc.assert(
      fc.property(bodies, fc.array(fc.tuple(fc.nat(), body), { maxLength: 6 }), (start, edits) => {
        const before = kernel.live;
        let list = placedBodies(start);
        const part = createLivePart(kernel);
        part.update(list);
        for (const [at, changed] of edits) {
          const index = at % list.length;
          const [made] = placedBodies([changed]);
          list = list.map((one, i) =>
            i === index ? { ...made!, record: { ...made!.record, id: one.record.id } } : one,
          );
          part.update(list);
          const fresh = createLivePart(kernel);
          fresh.update(list);
          expect(part.figures).toEqual(fresh.figures);
          expect(part.meshOf('finished')).toEqual(fresh.meshOf('finished'));
          fresh.drop();
        }
        part.drop();
        expect(kernel.live).toBe(before);
      }),
      { numRuns: 15, seed: 20261125 },
    );
  });

  test('after edits that move faces on or widen cylinders are those of a fresh computation, but for rounding', () => {
    const [ours, theirs] = [countingCuts(), countingCuts()];
    const edit = fc.record({
      at: fc.nat(),
      side: fc.nat({ max: 5 }),
      by: fc.oneof(fc.constantFrom(-0.25, 0.25, 0.1, -1, 1), fc.integer({ min: -6, max: 6 })),
      twice: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(body, { minLength: 3, maxLength: 14 }),
        fc.array(edit, { minLength: 1, maxLength: 6 }),
        (start, edits) => {
          const before = kernel.live;
          let list = placedBodies(start);
          const part = createLivePart(ours.kernel);
          part.update(list);
          for (const { at, side, by, twice } of edits) {
            const places = [at % list.length, ...(twice ? [(at + 1) % list.length] : [])];
            list = list.map((one, i) => (places.includes(i) ? { ...one, shape: nudged(one.shape!, side, by) } : one));
            part.update(list);
            const fresh = createLivePart(theirs.kernel);
            fresh.update(list);
            expectClose(part, fresh);
            fresh.drop();
          }
          part.drop();
          expect(kernel.live).toBe(before);
        },
      ),
      { numRuns: 150, seed: 20261125 },
    );
    expect(ours.total()).toBeLessThan(0.8 * theirs.total());
  });

  test('a plate that all others stand on, and bosses of one diameter, are carried along without the kernel', () => {
    const cuts = countingCuts();
    let bodies: readonly BenchBody[] = bedPlate(50).slice(0, 49);
    const part = createLivePart(cuts.kernel);
    part.update(placedOf(bodies));
    const all = cuts.total();
    const check = () => {
      part.update(placedOf(bodies));
      const fresh = createLivePart(kernel);
      fresh.update(placedOf(bodies));
      expectClose(part, fresh);
      fresh.drop();
    };
    for (const by of [0.25, 1.1, -2.3]) {
      bodies = edited(bodies, 0, by);
      check();
    }
    expect(cuts.total()).toBe(all);
    for (const by of [0.25, 1.1, -2.3]) {
      for (let i = 1; i < 49; i += 6) bodies = edited(bodies, i, by);
      check();
    }
    // Where a boss comes to a wall of its cell, the cell is cut anew.
    expect(cuts.total() - all).toBeLessThan(all);
    // Down past the feet of the bosses, whose corners come out of the plate.
    bodies = edited(bodies, 0, -12);
    const before = cuts.total();
    check();
    expect(cuts.total()).toBeGreaterThan(before);
    part.drop();
  });

  test('an edit of one boss re-does its own cells only', () => {
    const cuts = countingCuts();
    const plate = bedPlate(50);
    const part = createLivePart(cuts.kernel);
    part.update(placedOf(plate));
    const all = cuts.total();
    // A boss that goes down to the foot of the plate: its end comes through what is below.
    part.update(placedOf(plate.map((one, i) => (i === 9 && one.is === 'cylinder' ? { ...one, z: [-2, 50] } : one))));
    expect(cuts.total() - all).toBeGreaterThan(0);
    expect(cuts.total() - all).toBeLessThanOrEqual(all / 4);
    part.drop();
  });

  test('pieces that hang together through walls of cells are one, those that do not are several', () => {
    const bars = Array.from(
      { length: 8 },
      (_, i): HandMade => ({ shape: block([0, 400], [30 * i, 30 * i + 20], [0, 20]) }),
    );
    expect(both(placedBodies(bars)).live?.finished.pieces).toBe(8);
    const tie: HandMade = { shape: block([190, 200], [0, 230], [5, 15]) };
    expect(both(placedBodies([...bars, tie])).live?.finished.pieces).toBe(1);
    const cut: HandMade = { shape: block([185, 205], [110, 115], [0, 20]), adds: false, finish: 'machined' };
    const { live } = both(placedBodies([...bars, tie, cut]));
    expect(live?.asCast.pieces).toBe(1);
    expect(live?.finished.pieces).toBe(2);
  });

  test('a ring turned out of the axes is measured as well as one along them', () => {
    const holes = Array.from(
      { length: 8 },
      (_, i): HandMade => ({
        shape: cylinder('Z', [60, 0], [-1, 21], 7),
        adds: false,
        finish: 'machined',
        moves: [turnAbout('Z', 0, 0, 45 * i + 11)],
      }),
    );
    const { live } = both(placedBodies([{ shape: cylinder('Z', [0, 0], [0, 20], 80) }, ...holes]));
    expect(live!.finished.volumeMm3 / (20 * Math.PI * (80 ** 2 - 8 * 7 ** 2))).toBeCloseTo(1, 6);
    expect(live!.asCast.volumeMm3 / (20 * Math.PI * 80 ** 2)).toBeCloseTo(1, 6);
  });
});

describe('the order of runs', () => {
  const at = (adds: boolean, x: number) => ({ adds, min: [x, 0, 0] as const, max: [x + 10, 1, 1] as const });

  test('bosses and holes of different places come to two runs, however they are listed', () => {
    const list = [0, 100, 200].flatMap((x) => [at(true, x), at(false, x)]);
    expect(runsOf(list).map((run) => run.map(({ adds }) => adds))).toEqual([
      [true, true, true],
      [false, false, false],
    ]);
  });

  test('what meets keeps its order; a hole before anything stands comes to nothing later', () => {
    const [hole, boss, bore, plug] = [at(false, 0), at(true, 5), at(false, 8), at(true, 10)];
    expect(runsOf([hole, boss, bore, plug])).toEqual([[hole], [boss], [bore], [plug]]);
  });
});

test('until a part is measured anew its solid is spoken of by live figures, and by what its surfaces said last', () => {
  let list = placedOf(bedPlate(10));
  const solids = createSolids({ parts: () => [PART], bodiesOf: () => list }, () => kernel);
  expect(solids.latestOf(PART)).toBeUndefined();
  solids.computeLive(PART);
  expect(solids.latestOf(PART)).toBeUndefined();
  solids.compute(PART);
  const measured = solids.solidOf(PART)!;
  expect(solids.latestOf(PART)).toBe(measured);
  expect(measured.level).toBe('measured');
  list = placedOf(edited(bedPlate(10), 0, 5)).slice(0, 8);
  const before = solids.latestOf(PART)!;
  expect(before).toMatchObject({ level: 'live', finished: measured.finished });
  expect(solids.computeLive(PART)).toBe(true);
  expect(solids.computeLive(PART)).toBe(false);
  const between = solids.latestOf(PART)!;
  expect(between.level).toBe('live');
  expect(between.finished).toBe(solids.figuresOf(PART)!.finished);
  expect(between.finished.volumeMm3).toBeGreaterThan(measured.finished.volumeMm3);
  expect(solids.latestOf(PART)).toBe(between);
  const there = new Set(list.map(({ record }) => record.id));
  for (const { body, beside } of between.faces.holes) expect(there.has(body) && there.has(beside)).toBe(true);
  expect(solids.solidOf(PART)).toBeUndefined();
  solids.compute(PART);
  expect(solids.latestOf(PART)).toBe(solids.solidOf(PART));
  expect(solids.figuresOf(PART)).toBe(solids.solidOf(PART));
  solids.drop();
});
