import { describe, expect, test } from 'vitest';
import { block, corner, cylinder, prism, tube } from '../../../../tests/support/placed-bodies.ts';
import { STAY, turnAbout } from '../../solid/moves.ts';
import type { ExactShape, Move } from '../../solid/placed.ts';
import { type Silhouette, windingAround } from './hidden-ways.ts';
import { endOutline, sideOutline } from './silhouettes.ts';

const line = { axis: 'X', u: 0, v: 0 } as const;
const piece = (shape: ExactShape, move: Move = STAY, grow = 0) =>
  ({ piece: { is: 'fixture', index: 0 }, shape, moves: [move], adds: true, grow }) as const;

/** Area within ways that do not cross, openings taken off. */
const area = (silhouette: Silhouette) =>
  silhouette.reduce(
    (sum, way) =>
      sum +
      way.reduce((twice, a, i) => {
        const b = way[(i + 1) % way.length]!;
        return twice + (a.p * b.q - b.p * a.q) / 2;
      }, 0),
    0,
  );

describe('seen from the side and from the end', () => {
  test('a block is a rectangle of four corners', () => {
    const shape = piece(block([10, 60], [-5, 15], [0, 8]));
    expect(sideOutline(shape, 0, line, 'first').map((way) => way.length)).toEqual([4]);
    expect(area(sideOutline(shape, 0, line, 'first'))).toBeCloseTo(50 * 20, 9);
    expect(area(sideOutline(shape, 0, line, 'second'))).toBeCloseTo(50 * 8, 9);
    expect(area(endOutline(shape, 0, line))).toBeCloseTo(20 * 8, 9);
  });

  test('a block with 2 mm of stock is larger all round', () => {
    expect(area(sideOutline(piece(block([10, 60], [-5, 15], [0, 8]), STAY, 2), 0, line, 'first'))).toBeCloseTo(
      54 * 24,
      9,
    );
  });

  test('a tube shows its bore from the end and none from the side', () => {
    const shape = piece(tube('X', [3, 4], [0, 40], 20, 12));
    const end = endOutline(shape, 0, line);
    expect(windingAround(end, 3, 4)).toBe(0);
    expect(windingAround(end, 3 + 16, 4)).not.toBe(0);
    expect(windingAround(end, 3 + 20.1, 4)).toBe(0);
    // The facets leave 0.05 mm of sagitta out at the most.
    expect(area(end) / (Math.PI * (20 ** 2 - 12 ** 2))).toBeCloseTo(1, 2);
    expect(area(sideOutline(shape, 0, line, 'second'))).toBeCloseTo(40 * 40, 6);
  });

  test('an L keeps its re-entrant corner; a turned bar its slope', () => {
    const ell = prism(
      'Z',
      [0, 6],
      [corner(0, 0), corner(40, 0), corner(40, 10), corner(10, 10), corner(10, 30), corner(0, 30)],
    );
    const side = sideOutline(piece(ell), 0, line, 'first');
    expect(side.map((way) => way.length)).toEqual([6]);
    expect(area(side)).toBeCloseTo(40 * 10 + 10 * 20, 9);
    const bar = sideOutline(piece(cylinder('X', [0, 0], [-30, 30], 5), turnAbout('Z', 0, 0, 30)), 0, line, 'first');
    expect(area(bar)).toBeCloseTo(60 * 10, 6);
    expect(windingAround(bar, 29 * Math.cos(Math.PI / 6), 29 * 0.5)).not.toBe(0);
    expect(windingAround(bar, 29 * Math.cos(Math.PI / 6), -29 * 0.5)).toBe(0);
  });

  test('a U seen through both of its legs covers what either does', () => {
    const u = prism(
      'Z',
      [0, 10],
      [
        corner(0, 0),
        corner(30, 0),
        corner(30, 20),
        corner(20, 20),
        corner(20, 5),
        corner(10, 5),
        corner(10, 35),
        corner(0, 35),
      ],
    );
    const end = endOutline(piece(u), 0, line);
    expect(windingAround(end, 3, 5)).not.toBe(0);
    expect(windingAround(end, 30, 5)).not.toBe(0);
    expect(windingAround(end, 36, 5)).toBe(0);
  });
});
