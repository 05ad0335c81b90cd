import { beforeAll, describe, expect, test } from 'vitest';
import {
  block,
  cone,
  corner,
  cylinder,
  type HandMade,
  prism,
  solidOf,
  tube,
  turned,
} from '../../../tests/support/placed-bodies.ts';
import type { BodyId } from '../base/ids.ts';
import type { Kernel } from './manifold/kernel.ts';
import { loadKernel } from './manifold/load-kernel.ts';
import { compose, mirrorAbout, STAY, shiftAlong, turnAbout } from './moves.ts';
import type { PartFaces } from './solids.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const facesOf = (bodies: readonly HandMade[]): PartFaces => solidOf(kernel, bodies).solid!.faces;
const body = (index: number) => `body:${index}` as BodyId;
/** Thicknesses by the two bodies that bound each wall, to a micrometre. */
const walls = (bodies: readonly HandMade[]) =>
  Object.fromEntries(
    facesOf(bodies).walls.map(({ bodies: ids, thicknessMm }) => [
      `${ids.map((id) => id.slice(5)).join('-')}${thicknessMm === 0 ? ' sharp' : ''}`,
      Math.round(thicknessMm * 1000) / 1000,
    ]),
  );

const cube: HandMade = { shape: block([0, 100], [0, 100], [0, 100]) };
const take = (shape: HandMade['shape']): HandMade => ({ shape, adds: false, finish: 'cored' });

describe('walls between flat faces', () => {
  test('a solid block has none', () => {
    expect(walls([cube])).toEqual({});
  });

  test('a plate is as thick as it is', () => {
    expect(walls([{ shape: block([0, 100], [0, 60], [0, 4]) }])).toEqual({ '0-0': 4 });
  });

  test('a box with a cavity: floor, and the thinner of its sides', () => {
    expect(walls([cube, take(block([3, 95], [6, 94], [7, 101]))])).toEqual({ '0-1': 3 });
    expect(facesOf([cube, take(block([3, 95], [6, 94], [7, 101]))]).walls[0]?.at[0]).toBeCloseTo(1.5, 5);
  });

  test('a web between two cavities', () => {
    expect(
      walls([cube, take(block([20, 48], [20, 80], [20, 101])), take(block([51.5, 80], [20, 80], [20, 101]))]),
    ).toEqual({ '1-2': 3.5 });
  });

  test('a tapering rib is as thick as its thin end', () => {
    const rib = prism('X', [0, 50], [corner(0, 0), corner(10, 0), corner(6.5, 60), corner(3.5, 60)]);
    // Square to a side that leans 3.5 in 60, at its end: 3 along the top, less by the lean.
    const lean = 3.5 / 60;
    const square = (3 * Math.sqrt(1 + lean * lean)) / (1 - lean * lean);
    const found = walls([{ shape: rib }])['0-0']!;
    expect(found).toBeLessThanOrEqual(3.03);
    expect(found).toBeGreaterThan(2.9);
    expect(found).toBeCloseTo(square, 1);
  });

  test('where metal runs out to an edge it has no thickness; square and dovetail edges are none', () => {
    const wedge = prism('Z', [0, 20], [corner(0, 0), corner(60, 0), corner(60, 20)]);
    expect(walls([{ shape: wedge }])).toEqual({ '0-0 sharp': 0 });
    const dovetail = prism(
      'X',
      [0, 80],
      [
        corner(0, 0),
        corner(60, 0),
        corner(60 - 20 / Math.tan(Math.PI / 3), 20),
        corner(20 / Math.tan(Math.PI / 3), 20),
      ],
    );
    expect(walls([{ shape: dovetail }])).toEqual({});
  });

  test('across a gap there is no wall', () => {
    expect(walls([cube, { shape: block([103, 150], [0, 100], [0, 100]) }])).toEqual({});
  });

  test('faces that only pass one another bound no wall, but the neck between them does', () => {
    const low = { shape: block([0, 50], [0, 20], [0, 30]) };
    const high = { shape: block([50, 100], [0, 20], [26, 60]) };
    expect(walls([low, high])).toEqual({ '0-1': 4 });
  });

  test('two cavities corner to corner: the neck between their edges', () => {
    const neck = walls([cube, take(block([20, 50], [20, 50], [20, 101])), take(block([52, 80], [52, 80], [20, 101]))]);
    expect(neck['1-2']).toBeCloseTo(2 * Math.SQRT2, 3);
  });

  test('a sharp groove and a steep point over a floor, which no face of them looks at squarely', () => {
    const groove = prism('X', [-1, 101], [corner(50, 4), corner(50 + 40, 101), corner(50 - 40, 101)]);
    expect(walls([cube, take(groove)])).toEqual({ '0-1': 4 });
    const point = turned(
      'Z',
      [50, 50],
      [
        [101, 0],
        [101, 20],
        [3, 0],
      ],
    );
    const under = walls([cube, take(point)])['0-1']!;
    expect(under).toBeLessThanOrEqual(3);
    expect(under).toBeGreaterThan(2.95);
  });

  test('is the same wherever the part stands and however it is turned', () => {
    const move = compose(shiftAlong('X', 317), compose(turnAbout('Z', 10, -20, 30), mirrorAbout('Y', 4)));
    const bodies = [cube, take(block([3, 95], [6, 94], [7, 101]))];
    const there = walls(bodies.map((one) => ({ ...one, moves: [move] })));
    expect(Object.keys(there)).toEqual(['0-1']);
    expect(there['0-1']).toBeCloseTo(3, 3);
  });
});

describe('walls of round faces are never told thicker than they are', () => {
  test.each([
    ['a tube', [{ shape: tube('Z', [0, 0], [0, 50], 30, 26) }], 4],
    ['a hole beside a face', [cube, take(cylinder('Z', [14.5, 50], [-1, 101], 10))], 4.5],
    ['two holes', [cube, take(cylinder('Z', [40, 50], [-1, 101], 8)), take(cylinder('Z', [61, 50], [-1, 101], 8))], 5],
    [
      'holes that cross',
      [cube, take(cylinder('Z', [50, 50], [-1, 101], 8)), take(cylinder('X', [63, 50], [-1, 101], 2))],
      3,
    ],
    ['a rod', [{ shape: cylinder('Y', [0, 0], [0, 80], 2.5) }], 5],
    [
      'a hole in an eccentric boss',
      [{ shape: cylinder('Z', [0, 0], [0, 40], 30) }, take(cylinder('Z', [8, 0], [-1, 41], 19))],
      3,
    ],
    [
      'the bottom of a drilled hole',
      [
        cube,
        take(
          turned(
            'Z',
            [50, 50],
            [
              [101, 0],
              [101, 5],
              [10, 5],
              [5, 0],
            ],
          ),
        ),
      ],
      5,
    ],
  ] as const)('%s', (_, bodies, real) => {
    const found = facesOf(bodies).walls[0]!;
    expect(found.thicknessMm).toBeLessThanOrEqual(real + 1e-4);
    expect(found.thicknessMm).toBeGreaterThan(real - 0.15);
  });
});

describe('round holes and the faces beside them', () => {
  const plate: HandMade = { shape: block([0, 100], [0, 60], [0, 12]) };
  const hole = (x: number, y: number, r: number, moves: HandMade['moves'] = [STAY]): HandMade => ({
    shape: cylinder('Z', [x, y], [-1, 13], r),
    adds: false,
    finish: 'machined',
    moves,
  });

  test('one in the middle has none near', () => {
    expect(facesOf([plate, hole(50, 30, 5)]).holes).toEqual([]);
  });

  test('one near the edge: from its axis, and metal', () => {
    const [edge] = facesOf([plate, hole(9, 30, 5)]).holes;
    expect(edge).toMatchObject({ body: body(1), beside: body(0), copy: 0, diameterMm: 10 });
    expect(edge?.centreMm).toBeCloseTo(9, 6);
    expect(edge?.metalMm).toBeCloseTo(4, 6);
    expect(edge?.at[0]).toBeCloseTo(0, 6);
  });

  test('the copy that comes nearest', () => {
    const [edge] = facesOf([plate, hole(50, 30, 5, [STAY, shiftAlong('X', 20), shiftAlong('X', 42)])]).holes;
    expect(edge).toMatchObject({ copy: 2, beside: body(0) });
    expect(edge?.metalMm).toBeCloseTo(3, 6);
  });

  test('one that cuts into the edge has no metal left there, through the whole depth or part of it', () => {
    expect(facesOf([plate, hole(3, 30, 5)]).holes[0]).toMatchObject({ metalMm: 0, beside: body(0) });
    const boss: HandMade = { shape: block([0, 20], [20, 40], [12, 30]) };
    const deep: HandMade = { shape: cylinder('Z', [16, 30], [-1, 31], 5), adds: false };
    expect(facesOf([plate, boss, deep]).holes[0]).toMatchObject({ metalMm: 0, beside: body(1) });
  });

  test('in a round boss, and beside another hole', () => {
    const boss: HandMade = { shape: cylinder('Z', [50, 30], [0, 30], 9) };
    const found = facesOf([boss, { shape: cylinder('Z', [50, 30], [-1, 31], 5), adds: false }]).holes[0]!;
    expect(found.metalMm).toBeLessThanOrEqual(4);
    expect(found.metalMm).toBeGreaterThan(3.9);
    const two = facesOf([plate, hole(40, 30, 5), hole(52, 30, 4)]).holes;
    expect(two.map(({ body: of, beside }) => [of, beside])).toEqual([
      [body(1), body(2)],
      [body(2), body(1)],
    ]);
    expect(two[0]!.metalMm).toBeCloseTo(3, 1);
    expect(two[0]!.metalMm).toBeLessThanOrEqual(3);
  });

  test('a counterbore comes nearer than its hole', () => {
    const bored = turned(
      'Z',
      [8, 30],
      [
        [-1, 0],
        [-1, 3],
        [8, 3],
        [8, 6],
        [13, 6],
        [13, 0],
      ]
        .map(([a, r]) => [a!, r!] as const)
        .reverse(),
    );
    expect(facesOf([plate, { shape: bored, adds: false }]).holes[0]).toMatchObject({ diameterMm: 12 });
  });

  test.each([
    [
      'a shaft drilled across',
      [{ shape: cylinder('X', [0, 0], [0, 100], 12) }, { shape: cylinder('Z', [50, 0], [-13, 13], 4), adds: false }],
    ],
    [
      'bores that cross in the middle',
      [
        cube,
        { shape: cylinder('Z', [50, 50], [-1, 101], 8), adds: false },
        { shape: cylinder('X', [50, 50], [-1, 101], 6), adds: false },
      ],
    ],
    [
      'a keyway in a bore',
      [
        cube,
        { shape: cylinder('Z', [50, 50], [-1, 101], 10), adds: false },
        { shape: block([47, 53], [50, 63], [-1, 101]), adds: false },
      ],
    ],
    ['a face across a gap', [plate, { shape: block([0, 8], [0, 60], [30, 50]) }, hole(14, 30, 4)]],
    [
      'a hole drilled into a slope',
      [
        { shape: prism('Y', [0, 60], [corner(0, 0), corner(100, 0), corner(100, 80), corner(0, 20)]) },
        { shape: cylinder('Z', [50, 30], [-1, 90], 5), adds: false },
      ],
    ],
  ] as const)('%s breaks out nowhere', (_, bodies) => {
    expect(facesOf(bodies).holes.filter(({ metalMm }) => metalMm === 0)).toEqual([]);
  });
});

test('flat faces across the axes, those of one plane together; a round face has none', () => {
  const pads = [block([0, 10], [0, 10], [-2, 5]), block([90, 100], [0, 10], [-2, 5])].map((shape) => ({ shape }));
  const { flats } = facesOf([{ shape: block([0, 100], [0, 60], [0, 12]) }, ...pads]);
  expect(flats[0]).toMatchObject({ axis: 'Z', looks: 1, atMm: 12, areaMm2: 6000 });
  expect(flats.find(({ atMm, axis }) => axis === 'Z' && atMm === -2)).toMatchObject({ looks: -1, areaMm2: 200 });
  expect(flats).toHaveLength(10);
  const ball = cone('Z', [0, 0], [0, 10], [5, 0]);
  expect(facesOf([{ shape: ball }]).flats.map(({ axis, looks, atMm }) => [axis, looks, atMm])).toEqual([['Z', -1, 0]]);
});

test('pieces that hang on nothing are named by their bodies, in each state', () => {
  const { loose } = facesOf([
    cube,
    { shape: block([120, 130], [0, 10], [0, 10]) },
    { shape: block([130, 140], [0, 10], [0, 10]) },
    { shape: block([90, 125], [2, 8], [2, 8]) },
    { shape: block([101, 119], [-1, 11], [-1, 11]), adds: false, finish: 'machined' },
  ]);
  expect(loose['as cast']).toEqual([]);
  expect(loose.finished).toEqual([[body(1), body(2)]].map((ids) => expect.arrayContaining(ids)));
});
