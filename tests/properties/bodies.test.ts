import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseBuildJson, writeBuildJson } from '../../src/shared/build/build-json.ts';
import { runCommand } from '../../src/shared/build/commands/registry.ts';
import { apply, invert } from '../../src/shared/build/diff.ts';
import { buildOf, partsOf } from '../../src/shared/build/look-up.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { refusalWords } from '../../src/shared/build/refusals.ts';
import { validateBuild } from '../../src/shared/build/validate-build.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import { boundsOf, boundsOfCopy } from '../../src/shared/solid/bounds.ts';
import { exactVolume } from '../../src/shared/solid/exact-volume.ts';
import { compose, mirrorAbout, moved, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import { sidesOf } from '../../src/shared/solid/outline.ts';
import { createPlacing, placeBodies } from '../../src/shared/solid/place-bodies.ts';
import type { ExactShape, Extrusion, PlacedBody, Turned, Vec3 } from '../../src/shared/solid/placed.ts';
import { recordsOfBodies } from '../support/place-sketch.ts';
import { bodyOrderOf } from '../support/random-bodies.ts';
import { countingContext, type Dice, dice, emptyBuild, orderOf } from '../support/random-edits.ts';

/** Two throws in three are about bodies, the third about anything that a person does to a drawing. */
const orderFrom = (build: Build, thrown: Dice, turn: number) =>
  turn % 3 === 2 ? orderOf(build, thrown) : (bodyOrderOf(build, thrown) ?? orderOf(build, thrown));

test('every edit of bodies can be taken back, says what it did, and makes a whole build; refusals are whole sentences', () => {
  const carriedOut = new Map<string, number>();
  const refused = new Map<string, number>();
  fc.assert(
    fc.property(fc.array(dice, { minLength: 20, maxLength: 50 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      for (const [turn, thrown] of throws.entries()) {
        const order = orderFrom(build, thrown, turn);
        if (!order) continue;
        const step = runCommand(build, order.id, order.params as never, context);
        if (!step.ok) {
          refused.set(step.error.code, (refused.get(step.error.code) ?? 0) + 1);
          const { sentence, remedy } = refusalWords(step.error);
          expect(`${sentence} ${remedy}`).not.toMatch(/[{}]|undefined|\.\./);
          continue;
        }
        const next = apply(build, step.value.diff);
        expect(apply(next, invert(step.value.diff))).toEqual(build);
        carriedOut.set(order.id, (carriedOut.get(order.id) ?? 0) + 1);
        build = next;
      }
      const validated = validateBuild([...build.values()]);
      expect(validated).toMatchObject({ ok: true });
      const read = parseBuildJson(writeBuildJson({ records: [...build.values()], issues: [] }));
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      expect(new Map(buildOf(read.value.records))).toEqual(build);
    }),
    { numRuns: 30 },
  );
  for (const id of ['body-sketch', 'body-add', 'body-set', 'body-remove', 'body-move', 'solid-import']) {
    expect(carriedOut.get(id) ?? 0, id).toBeGreaterThan(3);
  }
  for (const code of ['needed-by-bodies', 'body-does-not-hold'])
    expect(refused.get(code) ?? 0, code).toBeGreaterThan(0);
}, 60_000);

test('bodies placed again after each edit are those placed afresh, and the same objects where nothing differs', () => {
  let placedOnes = 0;
  const problems = new Set<string>();
  fc.assert(
    fc.property(fc.array(dice, { minLength: 15, maxLength: 40 }), (throws) => {
      let build = emptyBuild();
      const context = countingContext();
      const drawing = createDrawing(build);
      const placing = createPlacing();
      const before = new Map<string, PlacedBody>();
      for (const [turn, thrown] of throws.entries()) {
        const order = orderFrom(build, thrown, turn);
        const step = order && runCommand(build, order.id, order.params as never, context);
        if (!step?.ok) continue;
        build = apply(build, step.value.diff);
        drawing.update(step.value.diff);
        const cold = createDrawing(build);
        for (const { id } of partsOf(build)) {
          const records = recordsOfBodies(build, id);
          const warm = placing.placeBodies(id, records, drawing);
          const afresh = placeBodies(id, records, cold);
          expect(warm).toEqual(afresh);
          expect(placing.placeBodies(id, records, drawing)).toBe(warm);
          for (const placed of warm) {
            const old = before.get(placed.record.id);
            if (old && old.record === placed.record && same(old, placed)) expect(placed).toBe(old);
            before.set(placed.record.id, placed);
            checkPlaced(placed);
            if (placed.shape) placedOnes++;
            else problems.add(placed.problem?.why === 'shape' ? placed.problem.code : (placed.problem?.why ?? ''));
          }
        }
      }
    }),
    { numRuns: 20 },
  );
  expect(placedOnes).toBeGreaterThan(100);
  for (const why of ['not-placed', 'no-size']) expect([...problems]).toContain(why);
}, 60_000);

const same = (a: PlacedBody, b: PlacedBody) => JSON.stringify([a, a.shape]) === JSON.stringify([b, b.shape]);

/** What holds of every placed body: a shape or a problem, a volume of more than nothing, a box with room in it. */
function checkPlaced(placed: PlacedBody): void {
  expect(placed.shape === undefined).toBe(placed.problem !== undefined);
  expect(placed.moves.length > 0).toBe(placed.shape !== undefined);
  if (!placed.shape) return;
  expect(exactVolume(placed.shape)).toBeGreaterThan(0);
  const box = boundsOf(placed)!;
  for (let k = 0; k < 3; k++) expect(box.max[k]!).toBeGreaterThan(box.min[k]!);
}

const anyMove = fc
  .record({
    axis: fc.constantFrom('X' as const, 'Y' as const, 'Z' as const),
    about: fc.constantFrom('X' as const, 'Y' as const, 'Z' as const),
    degrees: fc.oneof(fc.constantFrom(0, 45, 90, 120, 180), fc.double({ min: 0, max: 360, noNaN: true })),
    shift: fc.integer({ min: -50, max: 50 }),
    mirrored: fc.boolean(),
  })
  .map(({ axis, about, degrees, shift, mirrored }) => {
    const turned = compose(shiftAlong(axis, shift), turnAbout(about, 3, -7, degrees));
    return mirrored ? compose(mirrorAbout(axis, 11), turned) : turned;
  });

const anyShape: fc.Arbitrary<Extrusion | Turned> = fc.oneof(
  fc
    .record({
      axis: fc.constantFrom('X' as const, 'Y' as const, 'Z' as const),
      a0: fc.integer({ min: -20, max: 0 }),
      height: fc.integer({ min: 1, max: 30 }),
      bulges: fc.array(
        fc.integer({ min: -100, max: 100 }).map((percent) => percent / 100),
        { minLength: 3, maxLength: 7 },
      ),
      size: fc.integer({ min: 2, max: 40 }),
    })
    .map(({ axis, a0, height, bulges, size }): Extrusion => {
      const outline = bulges.map((bulge, i) => {
        const angle = (2 * Math.PI * i) / bulges.length;
        return { u: 5 + size * Math.cos(angle), v: size * Math.sin(angle), bulge };
      });
      return { is: 'extrusion', axis, a0, a1: a0 + height, outline };
    }),
  fc
    .record({
      axis: fc.constantFrom('X' as const, 'Y' as const, 'Z' as const),
      u: fc.integer({ min: -20, max: 20 }),
      v: fc.integer({ min: -20, max: 20 }),
      points: fc.array(fc.record({ a: fc.integer({ min: -30, max: 30 }), r: fc.integer({ min: 0, max: 25 }) }), {
        minLength: 3,
        maxLength: 6,
      }),
    })
    .map(({ axis, u, v, points }): Turned => ({ is: 'turned', axis, u, v, outline: points })),
);

const STEPS = 360;

/** Points all over the edges of a shape, close together. */
function pointsOf(shape: ExactShape): readonly Vec3[] {
  const place = (axis: string, a: number, u: number, v: number): Vec3 =>
    axis === 'X' ? [a, u, v] : axis === 'Y' ? [u, a, v] : [u, v, a];
  if (shape.is === 'extrusion') {
    return sidesOf(shape.outline).flatMap(({ from, arc }) => {
      const along = arc
        ? Array.from({ length: STEPS }, (_, i) => {
            const angle = arc.start + (arc.sweep * i) / STEPS;
            return { u: arc.centre.u + arc.radius * Math.cos(angle), v: arc.centre.v + arc.radius * Math.sin(angle) };
          })
        : [from];
      return along.flatMap(({ u, v }) => [place(shape.axis, shape.a0, u, v), place(shape.axis, shape.a1, u, v)]);
    });
  }
  if (shape.is === 'mesh') return [];
  return shape.outline.flatMap(({ a, r }) =>
    Array.from({ length: STEPS }, (_, i) => {
      const angle = (2 * Math.PI * i) / STEPS;
      return place(shape.axis, a, shape.u + r * Math.cos(angle), shape.v + r * Math.sin(angle));
    }),
  );
}

test('the box of a copy holds every point of it, and no more than it must', () => {
  fc.assert(
    fc.property(anyShape, anyMove, (shape, move) => {
      const box = boundsOfCopy(shape, move);
      const points = pointsOf(shape).map((point) => moved(move, point));
      // Between two samples of a circle of radius r the greatest lies at most r (1 − cos half a step) further out; an arc of
      // up to a half turn over a side of 80 mm has a radius of at most a few thousand where it is nearly straight.
      for (let k = 0; k < 3; k++) {
        const seen = points.map((point) => point[k]!);
        const [low, high] = [Math.min(...seen), Math.max(...seen)];
        expect(low).toBeGreaterThanOrEqual(box.min[k]! - 1e-9);
        expect(high).toBeLessThanOrEqual(box.max[k]! + 1e-9);
        expect(low - box.min[k]!).toBeLessThan(0.01);
        expect(box.max[k]! - high).toBeLessThan(0.01);
      }
    }),
    { numRuns: 300 },
  );
});
