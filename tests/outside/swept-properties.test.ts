import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { extrusionAskew, turnedAskew } from '../../src/shared/machining/swept/askew.ts';
import { boxOfPieces } from '../../src/shared/machining/swept/box-of-pieces.ts';
import { grownShape } from '../../src/shared/machining/swept/grown-shape.ts';
import { mostWithin } from '../../src/shared/machining/swept/most-within.ts';
import { pointFrom, poseOf } from '../../src/shared/machining/swept/pose.ts';
import { nothingFound } from '../../src/shared/machining/swept/reach.ts';
import { reachWithin } from '../../src/shared/machining/swept/reach-of-piece.ts';
import { reachOfShape } from '../../src/shared/machining/swept/reach-of-shape.ts';
import { deviationOf, sweepMesh } from '../../src/shared/machining/swept/sweep-mesh.ts';
import type { SweepLine } from '../../src/shared/machining/swept/sweep-piece.ts';
import { sweepPieces } from '../../src/shared/machining/swept/sweep-pieces.ts';
import { createSweeper } from '../../src/shared/machining/swept/sweeper.ts';
import { tighter } from '../../src/shared/machining/swept/tighter.ts';
import { createHolder } from '../../src/shared/solid/holds-point.ts';
import type { Kernel } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { compose, mirrorAbout, moved, STAY, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import { sidesOf } from '../../src/shared/solid/outline.ts';
import { findCrossing } from '../../src/shared/solid/outline-crossing.ts';
import type { ExactShape, Extrusion, MeshShape, Move, Turned, Vec3 } from '../../src/shared/solid/placed.ts';
import { corner, type HandMade, prism, solidOf, THE_PART, turned } from '../support/placed-bodies.ts';
import { piecesOf } from './swept-cases.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const { PI } = Math;
const axis = fc.constantFrom('X' as const, 'Y' as const, 'Z' as const);
const place = fc.integer({ min: -40, max: 40 });
const size = fc.integer({ min: 2, max: 40 });

/** A star of straight sides and arcs about a point. */
const star = fc
  .tuple(
    place,
    place,
    fc.array(fc.tuple(size, fc.constantFrom(0, 0, 0.2, 0.4142, -0.15)), { minLength: 3, maxLength: 7 }),
  )
  .map(([u, v, spokes]) =>
    spokes.map(([r, bulge], i) => {
      const angle = (2 * PI * i) / spokes.length;
      return corner(u + r * Math.cos(angle), v + r * Math.sin(angle), bulge);
    }),
  )
  .filter((outline) => findCrossing(outline) === undefined);
const extrusion: fc.Arbitrary<Extrusion> = fc
  .tuple(axis, place, size, star)
  .map(([along, a, length, outline]) => prism(along, [a, a + length], outline));

/** Up and down over the axis, and back along it or along a bore. */
const turnedShape: fc.Arbitrary<Turned> = fc
  .tuple(
    axis,
    fc.tuple(place, place),
    place,
    fc.constantFrom(0, 0, 1),
    fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), size), { minLength: 2, maxLength: 6 }),
  )
  .map(([along, at, start, bore, steps]) => {
    let a = start;
    const top = steps.map(([step, r], i): [number, number] => {
      a += i === 0 ? 0 : step + (i === steps.length - 1 ? 1 : 0);
      return [a, r];
    });
    return turned(along, at, [[start, bore], [a, bore], ...top.reverse()]);
  })
  .filter(({ outline }) => findCrossing(outline.map(({ a, r }) => corner(a, r))) === undefined);

const box: fc.Arbitrary<MeshShape> = fc
  .array(fc.tuple(place, place, place), { minLength: 4, maxLength: 4 })
  .map(
    (corners): MeshShape => ({
      is: 'mesh',
      vertices: Float64Array.from(corners.flat()),
      triangles: Uint32Array.of(0, 1, 2, 0, 2, 3, 0, 3, 1, 1, 3, 2),
    }),
  )
  .filter(({ vertices }) => new Set(vertices.filter((_, i) => i % 3 === 0)).size > 1);

const degrees = fc.constantFrom(0, 30, 45, 60, 90, 120, 180, 270, 17.3, 211.9);
const oneMove: fc.Arbitrary<Move> = fc.oneof(
  fc.constant(STAY),
  fc.tuple(axis, place, place, degrees).map(([along, u, v, angle]) => turnAbout(along, u, v, angle)),
  fc.tuple(axis, place).map(([along, at]) => mirrorAbout(along, at)),
  fc.tuple(axis, place).map(([along, mm]) => shiftAlong(along, mm)),
);
const move = fc.tuple(oneMove, oneMove, oneMove).map(([a, b, c]) => compose(a, compose(b, c)));
const line: fc.Arbitrary<SweepLine> = fc.record({ axis, u: place, v: place });
const shape: fc.Arbitrary<ExactShape> = fc.oneof(extrusion, turnedShape, box);
const body: fc.Arbitrary<HandMade> = fc.record({ shape, moves: fc.array(move, { minLength: 1, maxLength: 3 }) });
const bodies = fc.array(body, { minLength: 1, maxLength: 4 });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const thrown = fc.array(fc.tuple(share, share, share, share), { minLength: 60, maxLength: 60 });
type Throw = readonly [number, number, number, number];

/** A point on the surface of a shape or within it, as the throw will have it; ends and corners often. */
function pointIn(one: ExactShape, [p, q, r]: Throw): Vec3 {
  const put = (along: 'X' | 'Y' | 'Z', u: number, v: number, a: number): Vec3 =>
    along === 'X' ? [a, u, v] : along === 'Y' ? [u, a, v] : [u, v, a];
  const ended = (t: number) => Math.min(1, Math.max(0, 1.4 * t - 0.2));
  if (one.is === 'mesh') {
    const t = 3 * Math.min(one.triangles.length / 3 - 1, Math.floor((p * one.triangles.length) / 3));
    const [b, c] = q + r > 1 ? [1 - q, 1 - r] : [q, r];
    return [0, 1, 2].map((k) => {
      const at = (i: number) => one.vertices[3 * one.triangles[t + i]! + k]!;
      return at(0) + b * (at(1) - at(0)) + c * (at(2) - at(0));
    }) as unknown as Vec3;
  }
  if (one.is === 'turned') {
    const i = Math.min(one.outline.length - 1, Math.floor(p * one.outline.length));
    const [from, to] = [one.outline[i]!, one.outline[(i + 1) % one.outline.length]!];
    const t = ended(q);
    const radius = from.r + t * (to.r - from.r);
    const angle = Math.round(r * 32) % 3 === 0 ? (Math.floor(r * 8) * PI) / 4 : 2 * PI * r;
    return put(
      one.axis,
      one.u + radius * Math.cos(angle),
      one.v + radius * Math.sin(angle),
      from.a + t * (to.a - from.a),
    );
  }
  const sides = sidesOf(one.outline);
  const { from, to, arc } = sides[Math.min(sides.length - 1, Math.floor(p * sides.length))]!;
  const t = ended(q);
  const a = one.a0 + ended(r) * (one.a1 - one.a0);
  if (!arc) return put(one.axis, from.u + t * (to.u - from.u), from.v + t * (to.v - from.v), a);
  const angle = arc.start + t * arc.sweep;
  const { centre, radius } = arc;
  return put(one.axis, centre.u + radius * Math.cos(angle), centre.v + radius * Math.sin(angle), a);
}

/** Seen from the line: along it, and away from it. */
function seen({ axis: along, u, v }: SweepLine, [x, y, z]: Vec3): readonly [at: number, away: number] {
  if (along === 'X') return [x, Math.hypot(y - u, z - v)];
  return along === 'Y' ? [y, Math.hypot(x - u, z - v)] : [z, Math.hypot(x - u, y - v)];
}

/** Points of copies of bodies, pushed outwards by no more than `grow` in any direction. */
function* pointsOf(list: readonly HandMade[], throws: readonly Throw[], grow = 0): Generator<Vec3> {
  for (const { shape: one, moves = [STAY] } of list) {
    for (const copy of moves) {
      for (const once of throws) {
        const point = moved(copy, pointIn(one!, once));
        const [height, angle] = [2 * once[2] - 1, 2 * PI * once[3]];
        const flat = Math.sqrt(1 - height * height);
        yield [
          point[0] + grow * flat * Math.cos(angle),
          point[1] + grow * flat * Math.sin(angle),
          point[2] + grow * height,
        ];
      }
    }
  }
}

const NEAR = 1e-7;

describe('what is swept', () => {
  test('never reaches beyond the profile, nor beyond its ends; with stock all round neither', () => {
    fc.assert(
      fc.property(bodies, line, fc.constantFrom(0, 0, 1.5, 6), thrown, (list, about, grow, throws) => {
        const profile = sweepPieces(piecesOf(list, grow), about);
        const found = boxOfPieces(piecesOf(list, grow), about)!;
        expect(found.along[0].at).toBeCloseTo(profile.edges[0]!, 7);
        expect(found.along[1].at).toBeCloseTo(profile.edges.at(-1)!, 7);
        for (const point of pointsOf(list, throws, grow)) {
          const [at, away] = seen(about, point);
          expect(at).toBeGreaterThan(profile.edges[0]! - NEAR);
          expect(at).toBeLessThan(profile.edges.at(-1)! + NEAR);
          expect(away).toBeLessThan(mostWithin(profile, at - NEAR * 4, at + NEAR * 4)!.most + NEAR);
        }
      }),
      { numRuns: 250 },
    );
  });

  test('is never known to reach farther than it may; the known point lies on a piece, within the stretch', () => {
    fc.assert(
      fc.property(bodies, line, fc.constantFrom(0, 2), share, share, (list, about, grow, p, q) => {
        const pieces = piecesOf(list, grow);
        const profile = sweepPieces(pieces, about);
        profile.least.forEach((least, i) => {
          expect(least).toBeLessThanOrEqual(profile.most[i]! + 1e-12);
        });
        const sweeper = createSweeper(pieces, about);
        const [lo, hi] = sweeper.extent!;
        const from = lo + Math.min(p, q) * (hi - lo);
        const to = lo + Math.max(p, q) * (hi - lo) + 1e-3;
        const found = reachWithin(sweeper, [from, to]);
        if (!found) return;
        expect(found.most).toBeLessThanOrEqual(mostWithin(profile, from, to)!.most + 2e-5);
        const { shape: one, moves, grow: stock } = pieces[found.index]!;
        if (stock > 0 && one.is === 'mesh') return;
        expect(found.pointMm).toBeGreaterThan(found.most - 2e-5);
        expect(found.at).toBeGreaterThanOrEqual(from);
        expect(found.at).toBeLessThanOrEqual(to);
        expect(seen(about, found.point)[1]).toBeCloseTo(found.pointMm, 9);
        expect(createHolder(grownShape(one, stock), moves[found.copy]!)(found.point)).toBe(true);
      }),
      { numRuns: 250 },
    );
  });

  test('sweeps the same after a turn about the line, and moved along with it', () => {
    fc.assert(
      fc.property(bodies, line, degrees, place, (list, about, angle, mm) => {
        const turn = turnAbout(about.axis, about.u, about.v, angle);
        const on = (after: Move) => list.map((one) => ({ ...one, moves: one.moves!.map((m) => compose(after, m)) }));
        const options = { stepMm: 2, mostCells: 40 };
        const plain = sweepPieces(piecesOf(list), about, options);
        const turnedOne = sweepPieces(piecesOf(on(turn)), about, options);
        const shifted = sweepPieces(piecesOf(on(shiftAlong(about.axis, mm))), about, options);
        for (let i = 0; i < plain.most.length; i++) {
          const [from, to] = [plain.edges[i]!, plain.edges[i + 1]!];
          if (to - from < 1e-3) continue;
          const within = [from + 1e-6, to - 1e-6] as const;
          const least = reachWithin(createSweeper(piecesOf(list), about), within)?.most ?? 0;
          expect(mostWithin(turnedOne, ...within)!.most).toBeGreaterThan(least - 2e-5);
          expect(mostWithin(shifted, within[0] + mm, within[1] + mm)!.most).toBeGreaterThan(least - 2e-5);
        }
        const whole = (profile: typeof plain) => mostWithin(profile, -1e9, 1e9)!.most;
        expect(whole(turnedOne)).toBeCloseTo(whole(plain), 4);
        expect(whole(shifted)).toBeCloseTo(whole(plain), 4);
      }),
      { numRuns: 150 },
    );
  });

  test('comes to the same by the closed forms and by closing in', () => {
    fc.assert(
      fc.property(fc.oneof(extrusion, turnedShape), move, line, share, share, (one, copy, about, p, q) => {
        const pose = poseOf(one, copy, about);
        const exact = reachOfShape(one, 0, pose);
        const near = one.is === 'turned' ? turnedAskew(one, pose) : extrusionAskew(one, pose);
        expect(near.lo).toBeCloseTo(exact.lo, 7);
        expect(near.hi).toBeCloseTo(exact.hi, 7);
        const from = exact.lo + Math.min(p, q) * (exact.hi - exact.lo) - 1e-3;
        const to = exact.lo + Math.max(p, q) * (exact.hi - exact.lo) + 1e-3;
        const [a, b] = [nothingFound(), nothingFound()];
        exact.within(from, to, a);
        near.within(from, to, b);
        expect(b.most).toBeGreaterThan(a.least - 1e-9);
        expect(a.most).toBeGreaterThan(b.least - 1e-9);
        expect(Math.abs(a.most - b.most)).toBeLessThan(2e-5);
      }),
      { numRuns: 250 },
    );
  });

  test('closes in on the radius at every place when cut finer', () => {
    fc.assert(
      fc.property(fc.array(body, { minLength: 1, maxLength: 2 }), line, (list, about) => {
        const sweeper = createSweeper(piecesOf(list), about);
        const [coarse, fine] = [40, 400].map((mostCells) =>
          sweepPieces(piecesOf(list), about, { stepMm: 0.05, mostCells }),
        ) as [ReturnType<typeof sweepPieces>, ReturnType<typeof sweepPieces>];
        let [offCoarse, offFine, length] = [0, 0, 0];
        fine.most.forEach((most, i) => {
          const [from, to] = [fine.edges[i]!, fine.edges[i + 1]!];
          expect(most).toBeLessThanOrEqual(mostWithin(coarse, from, to)!.most + 2e-5);
          const middle = (from + to) / 2;
          const truth = reachWithin(sweeper, [middle, middle + 1e-6])?.most ?? 0;
          offFine += (to - from) * (most - truth);
          offCoarse += (to - from) * (mostWithin(coarse, from, to)!.most - truth);
          length += to - from;
        });
        // Where it climbs steeply, cells end at their shortest in both.
        const steep = 0.02 * mostWithin(fine, -1e9, 1e9)!.most;
        expect(offFine).toBeLessThan(0.75 * offCoarse + 0.05 * length + steep);
      }),
      { numRuns: 25 },
    );
  });
});

describe('with the kernel', () => {
  const plainBody: fc.Arbitrary<HandMade> = fc.record({
    shape: fc.oneof(
      fc.tuple(axis, place, size, fc.integer({ min: 3, max: 7 }), size).map(([along, a, d, n, r]) =>
        prism(
          along,
          [a, a + d],
          Array.from({ length: n }, (_, i) =>
            corner(r * Math.cos((2 * PI * i) / n), r * Math.sin((2 * PI * i) / n), i === 0 ? 0.3 : 0),
          ),
        ),
      ),
      turnedShape,
    ),
    moves: fc.array(move, { minLength: 1, maxLength: 2 }),
    adds: fc.boolean(),
  });

  test('the finished solid stays within what its bodies sweep, and reaches what is sure of it', () => {
    fc.assert(
      fc.property(fc.array(plainBody, { minLength: 1, maxLength: 4 }), line, (list, about) => {
        const { solids } = solidOf(kernel, list);
        const mesh = solids.meshOf(THE_PART, 'finished');
        solids.drop();
        const swept = sweepPieces(piecesOf(list), about, { stepMm: 1, mostCells: 60 });
        if (!mesh) return;
        const deviation = deviationOf(100);
        const exact = sweepMesh(mesh, about, deviation, { stepMm: 1, mostCells: 60 });
        const whole = sweepMesh(mesh, about, 0);
        // 24 bits of rounding of the kernel's mesh.
        const rounding = 1e-4;
        whole.least.forEach((least, i) => {
          const [from, to] = [whole.edges[i]! - rounding, whole.edges[i + 1]! + rounding];
          expect(least).toBeLessThan((mostWithin(swept, from, to)?.most ?? 0) + rounding);
        });
        swept.least.forEach((least, i) => {
          const [from, to] = [swept.edges[i]!, swept.edges[i + 1]!];
          expect(least).toBeLessThan((mostWithin(exact, from, to)?.most ?? 0) + 1e-9);
        });
        const both = tighter(swept, exact);
        both.most.forEach((most, i) => {
          const middle = (both.edges[i]! + both.edges[i + 1]!) / 2;
          if (both.edges[i + 1]! - both.edges[i]! < 1e-5) return;
          expect(both.least[i]!).toBeLessThanOrEqual(most);
          const a = mostWithin(swept, middle, middle + 1e-6)?.most ?? 0;
          const b = mostWithin(exact, middle, middle + 1e-6)?.most ?? 0;
          expect(most).toBeCloseTo(Math.min(a, b), 9);
          if (most > 0) expect(both.by[i]).toBeGreaterThanOrEqual(0);
        });
      }),
      { numRuns: 60 },
    );
  });
});

test('the frame of the line runs there and back', () => {
  expect(pointFrom({ axis: 'Y', u: 3, v: 4 }, 10, 1, 2)).toEqual([4, 10, 6]);
});
