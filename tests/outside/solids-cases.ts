import { mirrorAbout, STAY, shiftAlong, turnAbout } from '../../src/shared/solid/moves.ts';
import { block, cone, corner, cylinder, type HandMade, prism, tube, turned } from '../support/placed-bodies.ts';

interface Case {
  readonly name: string;
  readonly bodies: readonly HandMade[];
  /** mm³, by a formula that stands in handbooks; the rest is left to Open CASCADE alone. */
  readonly exact?: number;
}

const { PI, sqrt } = Math;
const cut = (shape: HandMade['shape'], moves?: HandMade['moves']): HandMade => ({
  shape,
  adds: false,
  ...(moves ? { moves } : {}),
});
const around = (count: number, u = 0, v = 0) =>
  Array.from({ length: count }, (_, i) => turnAbout('Z', u, v, (360 / count) * i));

/** Complete elliptic integrals K and E of the modulus k by the arithmetic-geometric mean (NIST DLMF 19.8.1, 19.8.6; from memory). */
function elliptic(k: number): { readonly K: number; readonly E: number } {
  let [a, g, c, power, sum] = [1, sqrt(1 - k * k), k, 0.5, 0];
  for (let i = 0; i < 40; i++) {
    sum += power * c * c;
    [a, g, c, power] = [(a + g) / 2, sqrt(a * g), (a - g) / 2, power * 2];
  }
  const K = PI / (2 * a);
  return { K, E: K * (1 - sum) };
}

/**
 * What two round bars whose axes cross at right angles have in common, radii r < R: (8 R / 3) ((R² + r²) E − (R² − r²) K)
 * of the modulus r / R (P. F. Byrd and M. D. Friedman's integrals; the formula from memory, its limit r = R being
 * Archimedes' 16 r³ / 3).
 */
export function crossing(R: number, r: number): number {
  if (r === R) return (16 * r ** 3) / 3;
  const { K, E } = elliptic(r / R);
  return ((8 * R) / 3) * ((R * R + r * r) * E - (R * R - r * r) * K);
}

/** A circular segment of the half angle h (handbook formula of plane areas). */
const segment = (r: number, h: number) => r * r * (h - Math.sin(h) * Math.cos(h));

const slot = (half: number, r: number) => [
  corner(-half, -r),
  corner(half, -r, 1),
  corner(half, r),
  corner(-half, r, 1),
];

const quarter = Math.tan(PI / 8);

const rounded = (x: number, y: number, r: number) => [
  corner(-x + r, -y),
  corner(x - r, -y, quarter),
  corner(x, -y + r),
  corner(x, y - r, quarter),
  corner(x - r, y),
  corner(-x + r, y, quarter),
  corner(-x, y - r),
  corner(-x, -y + r, quarter),
];

export const cases: readonly Case[] = [
  { name: 'a block', bodies: [{ shape: block([0.1, 80.3], [-7, 33], [1, 12.7]) }], exact: 80.2 * 40 * 11.7 },
  {
    name: 'a cylinder',
    bodies: [{ shape: cylinder('Y', [10.1, 450.7], [3.3, 103.3], 25.1) }],
    exact: PI * 25.1 ** 2 * 100,
  },
  { name: 'a small cylinder', bodies: [{ shape: cylinder('X', [0.3, 0.2], [0, 3], 0.45) }], exact: PI * 0.45 ** 2 * 3 },
  { name: 'a large cylinder', bodies: [{ shape: cylinder('Z', [0, 0], [0, 90], 900) }], exact: PI * 900 ** 2 * 90 },
  { name: 'a tube', bodies: [{ shape: tube('X', [5, 6], [0, 60], 30, 22.5) }], exact: PI * (30 ** 2 - 22.5 ** 2) * 60 },
  {
    name: 'a frustum',
    bodies: [{ shape: cone('Z', [3, 4], [10, 70], [30, 12]) }],
    exact: (PI * 60 * (900 + 360 + 144)) / 3,
  },
  { name: 'a cone', bodies: [{ shape: cone('Y', [3, 4], [10, 70], [0, 25]) }], exact: (PI * 60 * 625) / 3 },
  {
    name: 'a hexagonal bar',
    bodies: [
      {
        shape: prism(
          'X',
          [0, 40],
          Array.from({ length: 6 }, (_, i) => corner(12 * Math.cos((i * PI) / 3), 12 * Math.sin((i * PI) / 3))),
        ),
      },
    ],
    exact: ((3 * sqrt(3)) / 2) * 144 * 40,
  },
  { name: 'a round-ended lug', bodies: [{ shape: prism('Y', [0, 15], slot(20, 9)) }], exact: (PI * 81 + 40 * 18) * 15 },
  {
    name: 'a plate with rounded corners',
    bodies: [{ shape: prism('Z', [450, 452], rounded(150, 100, 12)) }],
    exact: (300 * 200 - (4 - PI) * 144) * 2,
  },
  {
    name: 'a pocket with rounded corners',
    bodies: [{ shape: block([-60, 60], [-40, 40], [0, 30]) }, cut(prism('Z', [10, 31], rounded(50, 30, 8)))],
    exact: 120 * 80 * 30 - (100 * 60 - (4 - PI) * 64) * 20,
  },
  {
    name: 'a stepped shaft in one outline',
    bodies: [
      {
        shape: turned(
          'X',
          [1, 2],
          [
            [0, 0],
            [120, 0],
            [120, 10],
            [80, 10],
            [80, 17.5],
            [30, 17.5],
            [30, 12],
            [0, 12],
          ],
        ),
      },
    ],
    exact: PI * (144 * 30 + 17.5 ** 2 * 50 + 100 * 40),
  },
  {
    // Pappus: 2π times the distance of the section's centroid from the axis, times its area.
    name: 'a ring of triangular section',
    bodies: [
      {
        shape: turned(
          'Z',
          [0, 0],
          [
            [0, 40],
            [12, 40],
            [6, 49],
          ],
        ),
      },
    ],
    exact: 2 * PI * (40 + 3) * 54,
  },
  {
    name: 'a flange with a bolt circle',
    bodies: [
      { shape: cylinder('Z', [0, 0], [0, 14], 60) },
      cut(cylinder('Z', [45, 0], [-1, 15], 5.5), around(6)),
      cut(cylinder('Z', [0, 0], [-1, 15], 20)),
    ],
    exact: PI * 14 * (3600 - 6 * 5.5 ** 2 - 400),
  },
  {
    name: 'a cross-drilled shaft',
    bodies: [{ shape: cylinder('X', [0, 0], [-50, 50], 20) }, cut(cylinder('Z', [0, 0], [-30, 30], 8))],
    exact: PI * 400 * 100 - crossing(20, 8),
  },
  {
    name: 'a shaft drilled across almost as wide as itself',
    bodies: [{ shape: cylinder('Y', [0, 0], [-50, 50], 20) }, cut(cylinder('X', [0, 0], [-30, 30], 19))],
    exact: PI * 400 * 100 - crossing(20, 19),
  },
  {
    name: 'bars of one radius crossing',
    bodies: [{ shape: cylinder('X', [0, 0], [-50, 50], 15) }, { shape: cylinder('Z', [0, 0], [-40, 40], 15) }],
    exact: PI * 225 * 180 - crossing(15, 15),
  },
  {
    name: 'a pipe with a branch',
    bodies: [
      { shape: cylinder('X', [0, 0], [-50, 50], 20) },
      { shape: cylinder('Z', [0, 0], [0, 45], 12) },
      cut(cylinder('X', [0, 0], [-51, 51], 16)),
      cut(cylinder('Z', [0, 0], [0, 46], 9)),
    ],
  },
  {
    name: 'a hole across a shaft beside its middle',
    bodies: [{ shape: cylinder('X', [0, 0], [-50, 50], 20) }, cut(cylinder('Z', [3, 9], [-30, 30], 6))],
  },
  {
    name: 'a blind hole with a drill point',
    bodies: [
      { shape: block([-20, 20], [-20, 20], [0, 40]) },
      cut(
        turned(
          'Z',
          [0, 0],
          [
            [15 - 5 / sqrt(3), 0],
            [40, 0],
            [40, 5],
            [15, 5],
          ],
        ),
      ),
    ],
    exact: 40 ** 3 - PI * 25 * 25 - (PI * 25 * 5) / sqrt(3) / 3,
  },
  {
    name: 'a countersunk hole',
    bodies: [
      { shape: block([-20, 20], [-20, 20], [0, 10]) },
      cut(
        turned(
          'Z',
          [2, 3],
          [
            [0, 0],
            [10, 0],
            [10, 7],
            [7, 4],
            [0, 4],
          ],
        ),
      ),
    ],
    exact: 16_000 - PI * 16 * 7 - (PI * 3 * (49 + 28 + 16)) / 3,
  },
  {
    name: 'a counterbored hole',
    bodies: [
      { shape: block([-20, 20], [-20, 20], [0, 10]) },
      cut(
        turned(
          'Z',
          [2, 3],
          [
            [0, 0],
            [10, 0],
            [10, 7],
            [6, 7],
            [6, 4],
            [0, 4],
          ],
        ),
      ),
    ],
    exact: 16_000 - PI * 16 * 6 - PI * 49 * 4,
  },
  {
    name: 'an angle with a filleted corner',
    bodies: [
      {
        shape: prism(
          'Y',
          [0, 25],
          [
            corner(0, 0),
            corner(60, 0),
            corner(60, 8),
            corner(18, 8, -quarter),
            corner(8, 18),
            corner(8, 50),
            corner(0, 50),
          ],
        ),
      },
    ],
    exact: (60 * 8 + 42 * 8 + (1 - PI / 4) * 100) * 25,
  },
  {
    name: 'a shaft with a flat',
    bodies: [{ shape: cylinder('X', [0, 0], [0, 40], 10) }, cut(block([-1, 41], [-20, 20], [6, 20]))],
    exact: PI * 100 * 40 - segment(10, Math.acos(0.6)) * 40,
  },
  {
    name: 'a shaft with a keyway',
    bodies: [
      { shape: cylinder('X', [0, 0], [0, 80], 15) },
      cut({ ...prism('Z', [10, 20], slot(14, 4)), outline: slot(14, 4).map((c) => ({ ...c, u: c.u + 40 })) }),
    ],
  },
  {
    name: 'a taper with a cross hole',
    bodies: [{ shape: cone('X', [0, 0], [0, 70], [22, 14]) }, cut(cylinder('Y', [35, 0], [-40, 40], 5))],
  },
  {
    name: 'a mirrored half',
    bodies: [{ shape: cone('X', [0, 0], [0, 48], [18, 9]), moves: [STAY, mirrorAbout('X', 0)] }],
    exact: (2 * PI * 48 * (324 + 162 + 81)) / 3,
  },
  {
    name: 'overlapping bosses in a row',
    bodies: [{ shape: cylinder('Z', [0, 0], [0, 20], 12), moves: [STAY, shiftAlong('X', 15), shiftAlong('X', 30)] }],
    exact: 20 * (3 * PI * 144 - 4 * segment(12, Math.acos(7.5 / 12))),
  },
  {
    name: 'a handwheel',
    bodies: [
      { shape: tube('Z', [0, 0], [-9, 9], 80, 64) },
      { shape: cylinder('Z', [0, 0], [-15, 15], 18) },
      { shape: cylinder('X', [0, 0], [10, 70], 6), moves: around(5) },
      cut(cylinder('Z', [0, 0], [-20, 20], 9)),
    ],
  },
  {
    name: 'a pulley with a groove, bored and cross-drilled',
    bodies: [
      {
        shape: turned(
          'Y',
          [7, 8],
          [
            [0, 10],
            [30, 10],
            [30, 45],
            [22, 45],
            [18, 33],
            [12, 33],
            [8, 45],
            [0, 45],
          ],
        ),
      },
      cut(cylinder('X', [15, 8], [0, 60], 3)),
    ],
  },
  {
    name: 'a thin wall far from the origin',
    bodies: [
      { shape: block([448.3, 450.1], [600.2, 700.2], [0.1, 90.1]) },
      cut(cylinder('X', [650.7, 40.3], [440, 460], 17.3)),
    ],
    exact: 1.8 * (100 * 90 - PI * 17.3 ** 2),
  },
];
