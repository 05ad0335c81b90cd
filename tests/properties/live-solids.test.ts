import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { bedPlate, edited, PART, placedOf } from '../../bench/solids-part.ts';
import { createSolids } from '../../src/shared/solid/create-solids.ts';
import { createLivePart } from '../../src/shared/solid/live/live-part.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { turnAbout } from '../../src/shared/solid/moves.ts';
import { runsOf } from '../../src/shared/solid/order.ts';
import type { MassProperties, PartMesh, PlacedBody } from '../../src/shared/solid/placed.ts';
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
  const shown = solids.shownMeshOf(THE_PART, 'finished');
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

  test('an edit of one boss re-does its own cells only', () => {
    let cuts = 0;
    const counting: Kernel = {
      ...kernel,
      get live() {
        return kernel.live;
      },
      meshOf: (solid) => {
        cuts++;
        return kernel.meshOf(solid);
      },
    };
    const plate = bedPlate(50);
    const part = createLivePart(counting);
    part.update(placedOf(plate));
    const all = cuts;
    cuts = 0;
    part.update(placedOf(edited(plate, 9, 0.25)));
    expect(cuts).toBeGreaterThan(0);
    expect(cuts).toBeLessThanOrEqual(all / 4);
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
