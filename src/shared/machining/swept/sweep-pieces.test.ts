import { describe, expect, test } from 'vitest';
import { block, cylinder, type HandMade, tube } from '../../../../tests/support/placed-bodies.ts';
import type { BodyId, PartId } from '../../base/ids.ts';
import { compose, STAY, shiftAlong, turnAbout } from '../../solid/moves.ts';
import { boxOfPieces, extentOfPiece } from './box-of-pieces.ts';
import { mostWithin } from './most-within.ts';
import { reachOfPiece, reachWithin } from './reach-of-piece.ts';
import { sweepMesh } from './sweep-mesh.ts';
import type { SweepPiece } from './sweep-piece.ts';
import { sweepPieces } from './sweep-pieces.ts';
import { createSweeper } from './sweeper.ts';
import { sweptOutline } from './swept-outline.ts';
import { tighter } from './tighter.ts';

const X = { axis: 'X', u: 0, v: 0 } as const;

const body = (name: string, { shape, adds = true, moves = [STAY] }: HandMade, part = 'part:one'): SweepPiece => ({
  piece: { is: 'body', part: part as PartId, body: `body:${name}` as BodyId, copy: 0 },
  shape: shape!,
  moves,
  adds,
  grow: 0,
});

const fixture = (index: number, { shape }: HandMade): SweepPiece => ({
  piece: { is: 'fixture', index },
  shape: shape!,
  moves: [STAY],
  adds: true,
  grow: 0,
});

describe('what is sure to be there', () => {
  const bar = body('bar', { shape: block([0, 100], [-30, 30], [-20, 20]) });
  const corners = Math.hypot(30, 20);
  // Takes the outside of the middle third off, beyond r = 25.
  const neck = { shape: tube('X', [0, 0], [33, 66], 50, 25), adds: false };
  const within = (pieces: readonly SweepPiece[]) => {
    const profile = sweepPieces(pieces, X, { edges: [40, 60] });
    return mostWithin(profile, 40, 60)!;
  };

  test('what a later body of the part takes away may be gone', () => {
    const found = within([bar, body('neck', neck)]);
    expect(found.most).toBeCloseTo(corners, 12);
    expect(found.least).toBe(0);
  });

  test('an earlier body, another part and no fixture are touched by it', () => {
    expect(within([body('neck', neck), bar]).least).toBeCloseTo(corners, 12);
    expect(within([bar, body('neck', neck, 'part:two')]).least).toBeCloseTo(corners, 12);
    expect(within([fixture(0, { shape: bar.shape }), body('neck', neck)]).least).toBeCloseTo(corners, 12);
  });

  test('a lesser body that stays is still sure', () => {
    const found = within([bar, body('shaft', { shape: cylinder('X', [0, 0], [0, 100], 24) }), body('neck', neck)]);
    expect(found.most).toBeCloseTo(corners, 12);
    expect(found.least).toBeCloseTo(24, 12);
  });

  test('a mesh of what is left says it closer', () => {
    const pieces = [bar, body('neck', neck)];
    // The bar with its middle planed down to 2 × 20 by 2 × 14 stands for the neck.
    const left = sweepMesh(stepped(), X, 0, { edges: [40, 60] });
    const both = tighter(sweepPieces(pieces, X, { edges: [40, 60] }), left);
    expect(mostWithin(both, 40, 60)!.most).toBeCloseTo(Math.hypot(20, 14), 12);
    expect(mostWithin(both, 40, 60)!.by).toEqual(bar.piece);
    expect(mostWithin(both, 0, 30)!.most).toBeCloseTo(corners, 12);
  });
});

/** Three blocks end to end; their walls between them count for nothing. */
function stepped() {
  const vertices: number[] = [];
  const triangles: number[] = [];
  for (const [x0, x1, y, z] of [
    [0, 33, 30, 20],
    [33, 66, 20, 14],
    [66, 100, 30, 20],
  ] as const) {
    const first = vertices.length / 3;
    for (const x of [x0, x1]) vertices.push(x, -y, -z, x, y, -z, x, y, z, x, -y, z);
    for (let i = 0; i < 4; i++) {
      const j = (i + 1) % 4;
      triangles.push(first + i, first + j, first + 4 + j, first + i, first + 4 + j, first + 4 + i);
    }
    triangles.push(first, first + 2, first + 1, first, first + 3, first + 2);
    triangles.push(first + 4, first + 5, first + 6, first + 4, first + 6, first + 7);
  }
  return { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
}

describe('who carries it', () => {
  const shaft = body('shaft', { shape: cylinder('X', [0, 0], [0, 200], 12) });
  const lugs = body('lug', {
    shape: block([80, 90], [30, 50], [-4, 4]),
    moves: [STAY, compose(shiftAlong('X', 60), turnAbout('X', 0, 0, 180))],
  });

  test('names the body and the copy in each cell, and nobody beyond the ends', () => {
    const profile = sweepPieces([shaft, lugs], X);
    expect(mostWithin(profile, 10, 20)!.by).toEqual(shaft.piece);
    expect(mostWithin(profile, 82, 84)!.by).toMatchObject({ body: 'body:lug', copy: 0 });
    expect(mostWithin(profile, 142, 144)!.by).toMatchObject({ body: 'body:lug', copy: 1 });
    expect(mostWithin(profile, 250, 260)).toBeUndefined();
  });

  test('tells one piece’s farthest point, and nothing where it is not', () => {
    expect(reachOfPiece(lugs, X, [141, 142])).toMatchObject({ copy: 1, most: Math.hypot(50, 4) });
    expect(reachOfPiece(lugs, X, [100, 130])).toBeUndefined();
    expect(reachOfPiece({ ...lugs, adds: false }, X, [80, 90])).toBeUndefined();
    expect(extentOfPiece(lugs, X)).toEqual([80, 150]);
  });

  test('finds the box about them seen from the line, and who reaches each face', () => {
    const box = boxOfPieces([shaft, lugs], { axis: 'X', u: 5, v: -1 })!;
    expect(box.along.map(({ at, index }) => [at, index])).toEqual([
      [0, 0],
      [200, 0],
    ]);
    expect(box.across[0]).toEqual([
      { at: -55, index: 1, copy: 1 },
      { at: 45, index: 1, copy: 0 },
    ]);
    expect(box.across[1].map(({ at }) => at)).toEqual([-11, 13]);
    expect(boxOfPieces([], X)).toBeUndefined();
  });

  test('leaves room between pieces that stand apart', () => {
    const apart = sweepPieces([shaft, body('far', { shape: cylinder('X', [0, 0], [250, 260], 5) })], X);
    const gap = mostWithin(apart, 210, 240)!;
    expect(gap.most).toBe(0);
    expect(gap.by).toBeUndefined();
  });

  test('draws the swept outline with upright steps', () => {
    const pieces = [shaft, body('flange', { shape: cylinder('X', [0, 0], [50, 60], 40) })];
    expect(sweptOutline(createSweeper(pieces, X), sweepPieces(pieces, X))).toEqual([
      { at: 0, r: 12 },
      { at: 50, r: 12 },
      { at: 50, r: 40 },
      { at: 60, r: 40 },
      { at: 60, r: 12 },
      { at: 200, r: 12 },
    ]);
  });

  test('of nothing there is nothing', () => {
    const profile = sweepPieces([], X);
    expect(profile.edges).toHaveLength(0);
    expect(mostWithin(profile, 0, 1)).toBeUndefined();
    expect(reachWithin(createSweeper([], X), [0, 1])).toBeUndefined();
    expect(sweepMesh({ vertices: new Float64Array(), triangles: new Uint32Array() }, X, 0.05).most).toHaveLength(0);
  });
});
