import { describe, expect, test } from 'vitest';
import { boxOfPieces } from '../../src/shared/machining/swept/box-of-pieces.ts';
import { mostWithin } from '../../src/shared/machining/swept/most-within.ts';
import { reachWithin } from '../../src/shared/machining/swept/reach-of-piece.ts';
import { sweepPieces } from '../../src/shared/machining/swept/sweep-pieces.ts';
import { createSweeper } from '../../src/shared/machining/swept/sweeper.ts';
import { cases, piecesOf } from './swept-cases.ts';

const X = { axis: 'X', u: 0, v: 0 } as const;

/** A hundredth of a thousandth of a millimetre: what lies askew is closed in upon to that, all else to rounding. */
const CLOSE = 1e-5;

describe.each(cases)('$name', ({ bodies, line = X, grow = 0, radii, extent }) => {
  const pieces = piecesOf(bodies, grow);

  test('the greatest radius is that of the formula, and a point of the solid has it', () => {
    const sweeper = createSweeper(pieces, line);
    for (const [stretch, radius] of radii) {
      const found = reachWithin(sweeper, stretch)!;
      expect(found.most).toBeGreaterThan(radius - 1e-9);
      expect(found.most).toBeLessThan(radius + CLOSE);
      expect(found.least).toBeGreaterThan(radius - CLOSE);
      expect(found.at).toBeGreaterThanOrEqual(stretch[0]);
      expect(found.at).toBeLessThanOrEqual(stretch[1]);
    }
  });

  test('the profile says the same where its cells end with the stretch', () => {
    const profile = sweepPieces(pieces, line, { edges: radii.flatMap(([stretch]) => [...stretch]) });
    for (const [[from, to], radius] of radii) {
      const found = mostWithin(profile, from, to)!;
      expect(found.most).toBeGreaterThan(radius - 1e-9);
      expect(found.most).toBeLessThan(radius + CLOSE);
      expect(found.least).toBeGreaterThan(radius - CLOSE);
    }
  });

  test('it begins and ends where the formula says', () => {
    const box = boxOfPieces(pieces, line)!;
    const profile = sweepPieces(pieces, line);
    const ends = [
      [box.along[0].at, box.along[1].at],
      [profile.edges[0]!, profile.edges.at(-1)!],
      createSweeper(pieces, line).extent!,
    ];
    for (const [from, to] of ends) {
      expect(from).toBeCloseTo(extent[0], 9);
      expect(to).toBeCloseTo(extent[1], 9);
    }
  });
});
