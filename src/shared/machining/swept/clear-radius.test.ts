import { describe, expect, test } from 'vitest';
import { cylinder } from '../../../../tests/support/placed-bodies.ts';
import { STAY } from '../../solid/moves.ts';
import { type BedCorner, clearProfile, clearRadius } from './clear-radius.ts';
import { sweepPieces } from './sweep-pieces.ts';

const bed = (...corners: readonly (readonly [across: number, down: number])[]): readonly BedCorner[] =>
  corners.map(([across, down]) => ({ across, down }));

const cases: readonly (readonly [
  name: string,
  bed: readonly BedCorner[],
  radius: number,
  at: BedCorner | undefined,
])[] = [
  ['flat bed: its height below the line', bed([-80, 95], [80, 95]), 95, { across: 0, down: 95 }],
  [
    'two shears with a way through between them: the nearer inner edge, √(25² + 110²)',
    bed([-60, 110], [-30, 110], [-30, 150], [25, 150], [25, 110], [60, 110]),
    Math.hypot(25, 110),
    { across: 25, down: 110 },
  ],
  [
    'raised vee: its ridge, √(20² + 90²)',
    bed([-40, 120], [-20, 90], [0, 120], [60, 120]),
    Math.hypot(20, 90),
    { across: -20, down: 90 },
  ],
  [
    'slope: the foot of the perpendicular, 100 / √2',
    bed([0, 100], [100, 0]),
    100 / Math.SQRT2,
    { across: 50, down: 50 },
  ],
  [
    'end that stands above the line: level with it',
    bed([30, 200], [30, 150], [120, 150], [120, -10]),
    120,
    { across: 120, down: 0 },
  ],
  ['bed to one side only: its nearest corner', bed([60, 80], [100, 80]), 100, { across: 60, down: 80 }],
  ['outline over the line: nothing is free', bed([-50, 40], [0, -5], [50, 40]), 0, { across: 0, down: 0 }],
  ['no outline: all is free', [], Infinity, undefined],
];

test.each(cases)('%s', (_, corners, radius, at) => {
  const found = clearRadius(corners);
  expect(found.radius).toBeCloseTo(radius, 12);
  if (!at) expect(found.at).toBeUndefined();
  else {
    expect(found.at?.across).toBeCloseTo(at.across, 12);
    expect(found.at?.down).toBeCloseTo(at.down, 12);
  }
});

describe('a flanged shaft over a flat bed', () => {
  const piece = (index: number, r: number, ends: readonly [number, number]) =>
    ({
      piece: { is: 'fixture', index },
      shape: cylinder('X', [0, 0], ends, r),
      moves: [STAY],
      adds: true,
      grow: 0,
    }) as const;
  const profile = sweepPieces([piece(0, 20, [0, 200]), piece(1, 98, [150, 170])], { axis: 'X', u: 0, v: 0 });

  test('hits by what the flange reaches too far', () => {
    const found = clearProfile(profile, bed([-80, 95], [80, 95]))!;
    expect(found.margin).toBeCloseTo(-3, 12);
    expect(found.by).toEqual({ is: 'fixture', index: 1 });
    expect(found.at).toBeGreaterThan(150);
    expect(found.at).toBeLessThan(170);
  });

  test('clears beside it', () => {
    expect(clearProfile(profile, bed([-80, 95], [80, 95]), [0, 150])?.margin).toBeCloseTo(75, 12);
    expect(clearProfile(profile, bed([-80, 95], [80, 95]), [300, 400])).toBeUndefined();
  });
});
