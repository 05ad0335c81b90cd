import { beforeAll, describe, expect, test } from 'vitest';
import { mostWithin } from '../../src/shared/machining/swept/most-within.ts';
import { sweepMesh } from '../../src/shared/machining/swept/sweep-mesh.ts';
import type { SweepLine } from '../../src/shared/machining/swept/sweep-piece.ts';
import { sweepPieces } from '../../src/shared/machining/swept/sweep-pieces.ts';
import { compose, mirrorAbout, STAY, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import { block, cone, corner, cylinder, type HandMade, prism, tube } from '../support/placed-bodies.ts';
import { openCascadeMesh, type Tessellation } from './open-cascade.ts';
import { piecesOf } from './swept-cases.ts';

/**
 * Whole castings against the surfaces that Open CASCADE Technology, a general modeller, makes of them, cut into fine triangles: it
 * unites and cuts by itself, and knows nothing of sweeping.
 */
const DEFLECTION = 0.005;

let tessellate: (bodies: readonly HandMade[], deflectionMm: number) => Tessellation;
beforeAll(async () => {
  tessellate = await openCascadeMesh();
}, 120_000);

const cut = (shape: HandMade['shape'], moves: HandMade['moves'] = [STAY]): HandMade => ({ shape, adds: false, moves });
const round = (axis: 'X' | 'Y' | 'Z', count: number, start = 0) =>
  Array.from({ length: count }, (_, i) => turnAbout(axis, 0, 0, start + (360 * i) / count));

const castings: readonly { readonly name: string; readonly bodies: readonly HandMade[]; readonly line: SweepLine }[] = [
  {
    name: 'flanged bearing bracket, swung about its bore',
    bodies: [
      { shape: block([-40, 40], [-50, -38], [0, 70]) },
      { shape: prism('Z', [10, 60], [corner(-18, -40), corner(18, -40), corner(10, 0), corner(-10, 0)]) },
      { shape: cylinder('Z', [0, 0], [0, 70], 24) },
      cut(cylinder('Z', [0, 0], [0, 70], 12)),
      cut(cylinder('Y', [28, 15], [-50, -38], 5), [STAY, mirrorAbout('X', 0)]),
    ],
    line: { axis: 'Z', u: 0, v: 0 },
  },
  {
    name: 'crank with a web and an overhung pin, about its shaft',
    bodies: [
      { shape: cylinder('X', [0, 0], [-80, 0], 15) },
      {
        shape: prism('X', [0, 18], [corner(0, -22), corner(45, -14, 1), corner(45, 14), corner(0, 22, 1)]),
      },
      { shape: cylinder('X', [45, 0], [18, 60], 9) },
    ],
    line: { axis: 'X', u: 0, v: 0 },
  },
  {
    name: 'hub with six round arms and a rim, about a line beside its own',
    bodies: [
      { shape: tube('Z', [0, 0], [-15, 15], 90, 78) },
      { shape: cylinder('Z', [0, 0], [-25, 25], 20) },
      { shape: cone('X', [0, 0], [15, 82], [9, 6]), moves: round('Z', 6, 15) },
    ],
    line: { axis: 'Z', u: 12, v: -7 },
  },
  {
    name: 'three-legged stand whose legs lie askew, about an axis through its foot',
    bodies: [
      { shape: cylinder('Z', [0, 0], [60, 80], 25) },
      {
        shape: cylinder('Z', [0, 0], [0, 75], 7),
        moves: round('Z', 3).map((turn) => compose(turn, compose(shiftAlong('X', 50), turnAbout('Y', 0, 0, -28)))),
      },
    ],
    line: { axis: 'Z', u: 30, v: 10 },
  },
  {
    name: 'the same stand swung end over end',
    bodies: [
      { shape: cylinder('Z', [0, 0], [60, 80], 25) },
      {
        shape: cylinder('Z', [0, 0], [0, 75], 7),
        moves: round('Z', 3).map((turn) => compose(turn, compose(shiftAlong('X', 50), turnAbout('Y', 0, 0, -28)))),
      },
    ],
    line: { axis: 'X', u: 0, v: 40 },
  },
];

describe.each(castings)('$name', ({ bodies, line }) => {
  test('reaches as far in every stretch as its tessellated surface does', () => {
    const mesh = tessellate(bodies, DEFLECTION);
    const known = sweepMesh(mesh, line, 0);
    const [lo, hi] = [known.edges[0]!, known.edges.at(-1)!];
    // Where a wall stands square to the line, a triangle's corner may fall on either side of its end: 0.02 mm are left out.
    const stretches = Array.from({ length: 40 }, (_, i) => {
      const [from, to] = [lo + ((hi - lo) * i) / 40, lo + ((hi - lo) * (i + 1)) / 40];
      return { inner: [from + 0.02, to - 0.02], outer: [from - 0.02, to + 0.02] } as const;
    });
    const edges = stretches.flatMap(({ inner, outer }) => [...inner, ...outer]);
    const swept = sweepPieces(piecesOf(bodies), line, { edges });
    const truth = sweepMesh(mesh, line, 0, { edges });
    expect(swept.edges[0]).toBeCloseTo(lo, 1);
    expect(swept.edges.at(-1)).toBeCloseTo(hi, 1);
    for (const { inner, outer } of stretches) {
      const most = mostWithin(swept, ...inner)?.most ?? 0;
      expect(most).toBeGreaterThan((mostWithin(truth, ...inner)?.most ?? 0) - 1e-3);
      expect(most).toBeLessThan((mostWithin(truth, ...outer)?.most ?? 0) + 4 * DEFLECTION);
    }
    // Over the whole length and over quarters of it, to within the deflection.
    for (const [p, q] of [
      [0, 1],
      [0, 0.25],
      [0.25, 0.5],
      [0.5, 0.75],
      [0.75, 1],
    ] as const) {
      const [from, to] = [lo + p * (hi - lo), lo + q * (hi - lo)];
      const options = { edges: [from, to] };
      const most = mostWithin(sweepPieces(piecesOf(bodies), line, options), from, to)!.most;
      const there = mostWithin(sweepMesh(mesh, line, 0, options), from, to)!.most;
      expect(most).toBeGreaterThan(there - 1e-3);
      expect(most).toBeLessThan(there + 4 * DEFLECTION + 1e-3);
    }
  });
});
