import type { BodyId } from '../../src/shared/base/ids.ts';
import type { Stretch, SweepLine, SweepPiece } from '../../src/shared/machining/swept/sweep-piece.ts';
import { compose, mirrorAbout, STAY, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import type { OutlineCorner } from '../../src/shared/solid/placed.ts';
import {
  block,
  cone,
  corner,
  cylinder,
  type HandMade,
  prism,
  THE_PART,
  tube,
  turned,
} from '../support/placed-bodies.ts';

/** A part, the line that it turns about, and what plane geometry says of it. */
export interface Case {
  readonly name: string;
  readonly bodies: readonly HandMade[];
  /** The X axis when absent. */
  readonly line?: SweepLine;
  readonly grow?: number;
  /** The greatest radius within stretches along the line: by the formula beside it. */
  readonly radii: readonly (readonly [stretch: Stretch, radius: number])[];
  readonly extent: Stretch;
}

/** The bodies of a part as they are swept. */
export const piecesOf = (bodies: readonly HandMade[], grow = 0): readonly SweepPiece[] =>
  bodies.flatMap(({ shape, adds = true, moves = [STAY] }, i) =>
    shape
      ? [{ piece: { is: 'body', part: THE_PART, body: `body:${i}` as BodyId, copy: 0 }, shape, moves, adds, grow }]
      : [],
  );

const { hypot, sqrt, SQRT2, tan, PI } = Math;
const quarter = tan(PI / 8);

/** A rectangle from −a to a and −b to b, its corners rounded by r. */
const rounded = (a: number, b: number, r: number): readonly OutlineCorner[] => [
  corner(a - r, -b, quarter),
  corner(a, r - b),
  corner(a, b - r, quarter),
  corner(a - r, b),
  corner(r - a, b, quarter),
  corner(-a, b - r),
  corner(-a, r - b, quarter),
  corner(r - a, -b),
];

/** A slot of width 2 r with round ends about (0, 0) and (length, 0). */
const slot = (length: number, r: number): readonly OutlineCorner[] => [
  corner(0, -r),
  corner(length, -r, 1),
  corner(length, r),
  corner(0, r, 1),
];

const ell = [corner(0, -10), corner(60, -10), corner(60, 10), corner(15, 10), corner(15, 40), corner(0, 40)];

/** A polygon of chords of a semicircle, turned about its axis. */
const ball = (R: number, n: number) =>
  turned(
    'X',
    [0, 0],
    [
      ...Array.from({ length: n + 1 }, (_, i): [number, number] => {
        const angle = (PI * i) / n;
        return [R * Math.cos(angle), i === 0 || i === n ? 0 : R * Math.sin(angle)];
      }),
    ],
  );

export const cases: readonly Case[] = [
  {
    name: 'block, centred, drawn out square to the line: √((b/2)² + (h/2)²)',
    bodies: [{ shape: block([0, 100], [-30, 30], [-20, 20]) }],
    radii: [
      [[0, 100], sqrt(30 ** 2 + 20 ** 2)],
      [[40, 41], sqrt(30 ** 2 + 20 ** 2)],
    ],
    extent: [0, 100],
  },
  {
    name: 'block beside the line: its farthest edge, √(50² + 25²)',
    bodies: [{ shape: block([-5, 80], [10, 50], [-5, 25]) }],
    radii: [[[0, 1], hypot(50, 25)]],
    extent: [-5, 80],
  },
  {
    name: 'the same block drawn out along the line',
    bodies: [{ shape: prism('X', [-5, 80], [corner(10, -5), corner(50, -5), corner(50, 25), corner(10, 25)]) }],
    radii: [[[-5, 80], hypot(50, 25)]],
    extent: [-5, 80],
  },
  {
    name: 'cylinder about the line: r',
    bodies: [{ shape: cylinder('X', [0, 0], [0, 60], 17.5) }],
    radii: [[[0, 60], 17.5]],
    extent: [0, 60],
  },
  {
    name: 'cylinder parallel to the line: distance + r = √(12² + 5²) + 8',
    bodies: [{ shape: cylinder('X', [12, -5], [0, 60], 8) }],
    radii: [[[10, 20], 13 + 8]],
    extent: [0, 60],
  },
  {
    name: 'tube parallel to the line: distance + outer radius; its bore does not count',
    bodies: [{ shape: tube('Y', [3, 4], [0, 60], 30, 22) }],
    line: { axis: 'Y', u: 0, v: 0 },
    radii: [[[10, 20], 5 + 30]],
    extent: [0, 60],
  },
  {
    name: 'cone about the line: r falls evenly, from 10 to 4 over 20 mm',
    bodies: [{ shape: cone('X', [0, 0], [0, 20], [10, 4]) }],
    radii: [
      [[5, 10], 10 - (6 * 5) / 20],
      [[19, 20], 10 - (6 * 19) / 20],
    ],
    extent: [0, 20],
  },
  {
    name: 'pointed cone parallel to the line: distance + r(x)',
    bodies: [{ shape: cone('X', [6, 8], [0, 20], [0, 10]) }],
    radii: [
      [[0, 8], 10 + 4],
      [[0, 20], 20],
    ],
    extent: [0, 20],
  },
  {
    name: 'cylinder square to the line and through it: √(l² + r² − d²) at d from its axis',
    bodies: [{ shape: cylinder('Z', [50, 0], [-20, 35], 10) }],
    radii: [
      [[40, 60], hypot(35, 10)],
      [[56, 60], hypot(35, 8)],
      [[40, 42], hypot(35, 6)],
    ],
    extent: [40, 60],
  },
  {
    name: 'cylinder square to the line, k beside it: √(l² + (k + √(r² − d²))²)',
    bodies: [{ shape: cylinder('Z', [50, -14], [-20, 35], 10) }],
    radii: [
      [[40, 60], hypot(35, 14 + 10)],
      [[56, 60], hypot(35, 14 + 8)],
      [[58, 60], hypot(35, 14 + 6)],
    ],
    extent: [40, 60],
  },
  {
    name: 'cone square to the line and through it: √(w² + L(w)² − d²), greatest where the plane leaves the cone or at an end',
    bodies: [{ shape: cone('Z', [50, 0], [0, 30], [20, 10]) }],
    radii: [
      [[50, 51], hypot(30, 10)],
      // L = d = 15 at w = 15: hypot(15, 0), more than √(20² − 15²) at the base.
      [[65, 70], 15],
      // d = 6: at the top √(30² + 10² − 6²).
      [[56, 70], hypot(30, 8)],
    ],
    extent: [30, 70],
  },
  {
    // r² = w² + (15 + s)², s² = (26 − w/2)² − 12²: its derivative is nothing at w = 26, L = 13, s = 5.
    name: 'frustum square to the line, beside it: farthest within its side, √(26² + 20²)',
    bodies: [{ shape: cone('Z', [0, 15], [20, 28], [16, 12]) }],
    radii: [[[12, 16], hypot(26, 20)]],
    extent: [-16, 16],
  },
  {
    name: 'L-shape square to the line: the upright reaches √(40² + 6²), the foot √(10² + 6²)',
    bodies: [{ shape: prism('Z', [-6, 6], ell) }],
    radii: [
      [[0, 15], hypot(40, 6)],
      [[15, 60], hypot(10, 6)],
      [[14, 16], hypot(40, 6)],
    ],
    extent: [0, 60],
  },
  {
    name: 'L-shape along the line: its farthest corner, √(60² + 10²)',
    bodies: [{ shape: prism('X', [0, 12], ell) }],
    radii: [[[0, 12], hypot(60, 10)]],
    extent: [0, 12],
  },
  {
    name: 'L-shape about a line through its heel along Z: √(60² + 20²) from (0, −10)',
    bodies: [{ shape: prism('Z', [0, 12], ell) }],
    line: { axis: 'Z', u: 0, v: -10 },
    radii: [[[0, 12], hypot(60, 20)]],
    extent: [0, 12],
  },
  {
    name: 'rounded bar along the line: √((a − r)² + (b − r)²) + r',
    bodies: [{ shape: prism('X', [0, 50], rounded(40, 25, 10)) }],
    radii: [[[0, 50], hypot(30, 15) + 10]],
    extent: [0, 50],
  },
  {
    // At x = a − r + 0.6 r the corner's arc stands at y = b − r + 0.8 r.
    name: 'rounded plate square to the line: flat to a − r, then round the corner',
    bodies: [{ shape: prism('Z', [-5, 12], rounded(40, 25, 10)) }],
    radii: [
      [[0, 40], hypot(25, 12)],
      [[36, 40], hypot(15 + 8, 12)],
      [[38, 40], hypot(15 + 6, 12)],
    ],
    extent: [-40, 40],
  },
  {
    name: 'rounded plate turned by 30° about Z: extent a′ cos + b′ sin + r of its inner rectangle',
    bodies: [{ shape: prism('Z', [-5, 12], rounded(40, 25, 10)), moves: [turnAbout('Z', 0, 0, 30)] }],
    // Highest: y = 30 sin 30° + 15 cos 30° + 10, where x = 30 cos 30° − 15 sin 30° = 18.48.
    radii: [[[18, 19], hypot(15 + 7.5 * sqrt(3) + 10, 12)]],
    extent: [-(15 * sqrt(3) + 7.5 + 10), 15 * sqrt(3) + 7.5 + 10],
  },
  {
    name: 'lug with round ends along the line: distance to the far centre + half its width',
    bodies: [{ shape: prism('X', [0, 8], slot(50, 9)), moves: [turnAbout('X', 0, 0, 53)] }],
    radii: [[[2, 3], 50 + 9]],
    extent: [0, 8],
  },
  {
    name: 'lug with round ends standing off the line: y to 50 + √(9² − d²)',
    bodies: [{ shape: prism('Z', [-4, 4], slot(50, 9)), moves: [turnAbout('Z', 0, 0, 90)] }],
    radii: [
      [[-9, 9], hypot(59, 4)],
      [[5.4, 9], hypot(50 + 7.2, 4)],
    ],
    extent: [-9, 9],
  },
  {
    name: 'fillet along the line: one of its two ends, √((10 + 8)² + 10²)',
    bodies: [{ shape: prism('X', [0, 30], [corner(10, 10), corner(18, 10, -quarter), corner(10, 18)]) }],
    radii: [[[0, 30], hypot(18, 10)]],
    extent: [0, 30],
  },
  {
    // The hollow arc about (18, 18): at x = 18 − 4.8 it stands at y = 18 − 6.4.
    name: 'fillet square to the line: down its hollow arc, and along its foot',
    bodies: [{ shape: prism('Z', [-2, 3], [corner(10, 10), corner(18, 10, -quarter), corner(10, 18)]) }],
    radii: [
      [[10, 11], hypot(18, 3)],
      [[13.2, 18], hypot(18 - 6.4, 3)],
    ],
    extent: [10, 18],
  },
  {
    name: 'six bosses on a circle about the line: R + r, wherever the first one stands',
    bodies: [
      {
        shape: cylinder('X', [0, 0], [0, 15], 7),
        moves: Array.from({ length: 6 }, (_, i) => compose(turnAbout('X', 0, 0, 17 + 60 * i), shiftAlong('Y', 40))),
      },
    ],
    radii: [[[0, 15], 47]],
    extent: [0, 15],
  },
  {
    name: 'four bosses on a circle about a centre 5 beside the line: 5 + R + r',
    bodies: [
      {
        shape: cylinder('X', [5, 0], [0, 15], 7),
        moves: Array.from({ length: 4 }, (_, i) => compose(turnAbout('X', 5, 0, 90 * i), shiftAlong('Y', 40))),
      },
    ],
    radii: [[[0, 15], 52]],
    extent: [0, 15],
  },
  {
    name: 'two halves of a spool, the second the mirror image of the first about X = 30',
    bodies: [{ shape: cone('X', [3, 4], [0, 30], [20, 8]), moves: [STAY, mirrorAbout('X', 30)] }],
    radii: [
      [[0, 5], 25],
      [[25, 35], 5 + 8 + (12 * 5) / 30],
      [[50, 60], 25],
    ],
    extent: [0, 60],
  },
  {
    // Corners of the polygon lie on the ball: at 30 cos(60°) its radius is 30 sin(60°).
    name: 'ball of 180 chords: √(R² − x²) at its corners',
    bodies: [{ shape: ball(30, 180) }],
    radii: [
      [[15, 30], 15 * sqrt(3)],
      [[-30, 30], 30],
    ],
    extent: [-30, 30],
  },
  {
    name: 'mesh of a cube standing on an edge: √(10² + 10²) over its corners, y falling by x from there',
    bodies: [
      {
        shape: {
          is: 'mesh',
          // A square bar of side 10 √2 turned by 45° about Z, from z = −3 to 7.
          vertices: Float64Array.of(
            10,
            0,
            -3,
            0,
            10,
            -3,
            -10,
            0,
            -3,
            0,
            -10,
            -3,
            10,
            0,
            7,
            0,
            10,
            7,
            -10,
            0,
            7,
            0,
            -10,
            7,
          ),
          triangles: Uint32Array.of(
            ...[0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7],
            ...[0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7],
          ),
        },
      },
    ],
    radii: [
      [[-10, 10], hypot(10, 7)],
      [[4, 10], hypot(6, 7)],
    ],
    extent: [-10, 10],
  },
  {
    // The far corner (50, 20) turned by 30°: y = 50 sin 30° + 20 cos 30°.
    name: 'block turned by 30° about Z: its corners',
    bodies: [{ shape: block([0, 50], [-20, 20], [-10, 10]), moves: [turnAbout('Z', 0, 0, 30)] }],
    radii: [[[0, 100], hypot(25 + 10 * sqrt(3), 10)]],
    extent: [-10, 25 * sqrt(3) + 10],
  },
  {
    // Points of the end circle: y = l sin + r cos φ cos, z = r sin φ; farthest at φ = 0 for l ≥ r.
    name: 'long cylinder askew at 45°: (l + r) / √2',
    bodies: [{ shape: cylinder('X', [0, 0], [-30, 30], 10), moves: [turnAbout('Z', 0, 0, 45)] }],
    radii: [[[-50, 50], 40 / SQRT2]],
    extent: [-40 / SQRT2, 40 / SQRT2],
  },
  {
    // cos φ = l / r = 0.6: y = (6 + 6) / √2, z = 8.
    name: 'short cylinder askew at 45°: farthest round its end, √(12²/2 + 8²)',
    bodies: [{ shape: cylinder('X', [0, 0], [-6, 6], 10), moves: [turnAbout('Z', 0, 0, 45)] }],
    radii: [[[-50, 50], sqrt(72 + 64)]],
    extent: [-16 / SQRT2, 16 / SQRT2],
  },
  {
    name: 'cone askew: the far rim of its base, l sin 30° + r cos 30°',
    bodies: [{ shape: cone('X', [0, 0], [0, 40], [0, 12]), moves: [turnAbout('Z', 0, 0, 30)] }],
    radii: [[[0, 100], 40 * 0.5 + 6 * sqrt(3)]],
    extent: [0, 20 * sqrt(3) + 6],
  },
  {
    name: 'shaft, flange and key: steps where they begin and end; what ends at a stretch does not count in it',
    bodies: [
      { shape: cylinder('X', [0, 0], [0, 200], 12) },
      { shape: cylinder('X', [0, 0], [80, 95], 60) },
      { shape: block([150, 180], [8, 16], [-3, 3]) },
    ],
    radii: [
      [[0, 80], 12],
      [[80, 95], 60],
      [[95, 150], 12],
      [[140, 160], hypot(16, 3)],
    ],
    extent: [0, 200],
  },
  {
    name: 'bar with a hole through it: the hole takes nothing off the outside',
    bodies: [
      { shape: block([0, 100], [-30, 30], [-20, 20]) },
      { shape: cylinder('Z', [50, 0], [-20, 20], 10), adds: false },
    ],
    radii: [[[40, 60], hypot(30, 20)]],
    extent: [0, 100],
  },
  {
    name: 'line along Y through (10, −5): the block’s corner (40, 30) lies √(30² + 35²) away',
    bodies: [{ shape: block([0, 40], [0, 70], [0, 30]) }],
    line: { axis: 'Y', u: 10, v: -5 },
    radii: [[[0, 70], hypot(30, 35)]],
    extent: [0, 70],
  },
  {
    name: 'cylinder with 3 mm of stock: r + 3, and 3 mm longer at both ends',
    bodies: [{ shape: cylinder('X', [12, 5], [0, 60], 8) }],
    grow: 3,
    radii: [[[-3, 63], 13 + 8 + 3]],
    extent: [-3, 63],
  },
  {
    name: 'block with 2 mm of stock: every face stands out, so √(32² + 22²)',
    bodies: [{ shape: block([0, 100], [-30, 30], [-20, 20]) }],
    grow: 2,
    radii: [[[-2, 0], hypot(32, 22)]],
    extent: [-2, 102],
  },
  {
    // The side moves out by 2 square to itself: r by 2 / cos 45°. The base's edge of 45° is cut square 4 mm from it, along its
    // middle: there the grown side stands (2 − 4 sin 22.5°) / cos 22.5° beside the middle.
    name: 'cone of 45° with 2 mm of stock: r + 2 √2 at the same place; its sharp edge ends square',
    bodies: [{ shape: cone('X', [0, 0], [0, 20], [30, 10]) }],
    grow: 2,
    radii: [
      [[5, 10], 25 + 2 * SQRT2],
      [[-2, 0], 30 + 4 * Math.cos(PI / 8) + (2 - 4 * Math.sin(PI / 8)) * tan(PI / 8)],
    ],
    extent: [-2, 22],
  },
];
