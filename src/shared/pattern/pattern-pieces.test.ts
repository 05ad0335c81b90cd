import { beforeAll, describe, expect, test } from 'vitest';
import { castingOf, makes, patternPart } from '../../../tests/support/pattern-part.ts';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import type { PatternPiece } from './pattern-piece.ts';
import { patternPieces } from './pattern-pieces.ts';
import { solidOfPieces } from './solid-of-pieces.ts';
import { stockOf } from './stock.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

type Sketch = ReturnType<typeof sketchBodies>;

function piecesOf(
  draw: (s: Sketch) => void,
  over: Partial<Casting> | ((s: Sketch) => Partial<Casting>) = {},
  operations: readonly Operation[] = [],
) {
  const s = sketchBodies();
  draw(s);
  const more = typeof over === 'function' ? over(s) : over;
  const part = patternPart(s.records(), s.part.id);
  const casting = castingOf(s.part.id, more);
  const { shifts } = stockOf({ ...part, casting, operations });
  return patternPieces({ ...part, casting, operations, shifts });
}

function measured(pieces: readonly PatternPiece[]) {
  const before = kernel.live;
  const made = solidOfPieces(kernel, pieces)!;
  kernel.release(made.solid);
  expect(kernel.live).toBe(before);
  return made;
}

const block = (s: Sketch) =>
  s.body({
    type: 'block',
    x: [s.at('X', 0), s.at('X', 100)],
    y: [s.at('Y', 0), s.at('Y', 60)],
    z: [s.at('Z', 0), s.at('Z', 50)],
  });
const hole = (s: Sketch, diameter: number, more: Parameters<Sketch['body']>[1]) =>
  s.body(
    {
      type: 'cylinder',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 50)],
      centre: [s.at('X', 50), s.at('Y', 30)],
      diameter: s.size('diameter', diameter),
    },
    { adds: false, ...more },
  );

describe('foam', () => {
  test('is the casting with stock, machined bodies left out, cored holes open', () => {
    const s = sketchBodies();
    const { casting, pattern, cores, closed } = piecesOf(
      (sketch) => {
        block(sketch);
        hole(sketch, 30, { finish: 'cored' });
        hole(sketch, 34, { finish: 'machined' });
      },
      { up: '+Z' },
      [makes(s.part.id, 'mill', s.at('Z', 50))],
    );
    expect(pattern).toBe(casting);
    expect([cores, closed]).toEqual([[], []]);
    // Stock over: RMA G 1.4, half of DCTG 11 2.2, and 1 mm as it looks up.
    const area = 100 * 60 - Math.PI * 15 ** 2;
    expect(measured(casting).volumeMm3).toBeCloseTo(area * 54.6, 4);
  });

  test('a hole too small to fill with sand is cast solid where a drill makes it later', () => {
    const drawn = (sketch: Sketch) => {
      block(sketch);
      hole(sketch, 6, { finish: 'as cast' });
    };
    const s = sketchBodies();
    expect(piecesOf(drawn).closed).toEqual([]);
    expect(piecesOf(drawn, {}, [makes(s.part.id, 'drill', 'body:b2' as never)]).closed).toMatchObject([
      { body: 'body:b2', madeLater: true },
    ]);
    // Written, it holds for all.
    const own = piecesOf(drawn, { closeUnder: '7' });
    expect(own.closed).toEqual([{ body: 'body:b2', diameterMm: 6, madeLater: false }]);
    expect(measured(own.casting).volumeMm3).toBeCloseTo(300_000, 6);
  });

  test('a hole that stock fills is cast solid', () => {
    const s = sketchBodies();
    const { closed } = piecesOf(
      (sketch) => {
        block(sketch);
        hole(sketch, 4, { finish: 'cored' });
      },
      { closeUnder: '1' },
      [makes(s.part.id, 'ream', s.size('diameter', 4))],
    );
    expect(closed).toMatchObject([{ body: 'body:b2', diameterMm: 0, madeLater: true }]);
  });
});

describe('cores', () => {
  test('the pattern is filled and has prints; the metal has the hollow', () => {
    const { casting, pattern, cores, unknown } = piecesOf(
      (sketch) => {
        block(sketch);
        hole(sketch, 40, { finish: 'cored' });
      },
      (s) => ({
        moulding: 'split pattern in green sand',
        draft: '0',
        up: '+Z',
        parting: { station: s.at('Z', 0), beyond: '' },
        prints: [{ body: 'body:b2' as never, ends: ['15', ''] }],
      }),
    );
    const bore = Math.PI * 400;
    expect(measured(casting).volumeMm3).toBeCloseTo(300_000 - bore * 50, 4);
    expect(measured(pattern).volumeMm3).toBeCloseTo(300_000 + bore * 15, 4);
    expect(measured(pattern).min[2]).toBe(-15);
    expect(cores).toMatchObject([{ body: 'body:b2', printsMm: [15, undefined] }]);
    expect(cores[0]!.hollowMm3).toBeCloseTo(bore * 50, 6);
    expect(cores[0]!.volumeMm3).toBeCloseTo(bore * 65, 6);
    expect(unknown).toEqual([]);
  });
});

describe('draft', () => {
  const green = (s: Sketch, at: number, draft = '2'): Partial<Casting> => ({
    moulding: 'loose pattern in green sand',
    draft,
    up: '+Z',
    parting: { station: s.at('Z', at), beyond: '' },
  });
  const t = Math.tan((2 * Math.PI) / 180);

  // Foundry data: 50 mm at 2° is 1.75 mm a side.
  test('a block of 50 mm at 2° stands out by 1.75 mm a side at the parting', () => {
    const { casting } = piecesOf(block, (s) => green(s, 0));
    const made = measured(casting);
    expect(made.max[0] - 100).toBeCloseTo(1.75, 2);
    expect(-made.min[1]).toBeCloseTo(50 * t, 9);
    // A frustum of two rectangles, by the prismoid rule.
    const [low, middle, high] = [50 * t, 25 * t, 0].map((out) => (100 + 2 * out) * (60 + 2 * out));
    expect(made.volumeMm3).toBeCloseTo((50 / 6) * (low! + 4 * middle! + high!), 4);
  });

  test('parted in the middle, both halves meet', () => {
    const { casting } = piecesOf(block, (s) => green(s, 20));
    const made = measured(casting);
    expect(made.max[0] - 100).toBeCloseTo(30 * t, 9);
    const area = (out: number) => (100 + 2 * out) * (60 + 2 * out);
    const prismoid = (h: number, g0: number, g1: number) => (h / 6) * (area(g0) + 4 * area((g0 + g1) / 2) + area(g1));
    expect(made.volumeMm3).toBeCloseTo(prismoid(20, 10 * t, 30 * t) + prismoid(30, 30 * t, 0), 4);
  });

  test('a cylinder becomes a cone, exactly; a hollow narrows towards the parting', () => {
    const drawn = (s: Sketch) => {
      s.body({
        type: 'cylinder',
        axis: 'Z',
        ends: [s.at('Z', 0), s.at('Z', 50)],
        centre: [s.at('X', 50), s.at('Y', 30)],
        diameter: s.size('diameter', 80),
      });
      s.body(
        {
          type: 'cylinder',
          axis: 'Z',
          ends: [s.at('Z', 10), s.at('Z', 50)],
          centre: [s.at('X', 50), s.at('Y', 30)],
          diameter: s.size('diameter', 60),
        },
        { adds: false },
      );
    };
    const { casting, undercuts } = piecesOf(drawn, (s) => green(s, 0));
    const cone = (h: number, a: number, b: number) => (Math.PI * h * (a * a + a * b + b * b)) / 3;
    expect(measured(casting).volumeMm3).toBeCloseTo(cone(50, 40 + 50 * t, 40) - cone(40, 30 - 40 * t, 30), 3);
    expect(undercuts).toEqual([]);
  });

  test('a hollow that opens at the parting narrows upwards; one that opens nowhere needs a core', () => {
    const pocket = (from: number, to: number) => (s: Sketch) => {
      block(s);
      s.body(
        {
          type: 'cylinder',
          axis: 'Z',
          ends: [s.at('Z', from), s.at('Z', to)],
          centre: [s.at('X', 50), s.at('Y', 30)],
          diameter: s.size('diameter', 40),
        },
        { adds: false },
      );
    };
    const cone = (h: number, a: number, b: number) => (Math.PI * h * (a * a + a * b + b * b)) / 3;
    const area = (out: number) => (100 + 2 * out) * (60 + 2 * out);
    const outside = (50 / 6) * (area(50 * t) + 4 * area(25 * t) + area(0));
    const cod = piecesOf(pocket(0, 30), (s) => green(s, 0));
    expect(measured(cod.casting).volumeMm3).toBeCloseTo(outside - cone(30, 20, 20 - 30 * t), 2);
    expect(cod.undercuts).toEqual([]);
    expect(piecesOf(pocket(10, 30), (s) => green(s, 0)).undercuts).toEqual(['body:b2']);
  });

  test('a hollow across the draw is an undercut; a bar across it is widened at its ends', () => {
    const { casting, undercuts } = piecesOf(
      (s) => {
        s.body({
          type: 'cylinder',
          axis: 'X',
          ends: [s.at('X', 0), s.at('X', 100)],
          centre: [s.at('Y', 0), s.at('Z', 0)],
          diameter: s.size('diameter', 40),
        });
        s.body(
          {
            type: 'cylinder',
            axis: 'X',
            ends: [s.at('X', 50), s.at('X', 100)],
            centre: [s.at('Y', 0), s.at('Z', 0)],
            diameter: s.size('diameter', 20),
          },
          { adds: false },
        );
      },
      (s) => green(s, 0),
    );
    expect(undercuts).toEqual(['body:b2']);
    const made = measured(casting);
    expect(made.max[0] - 100).toBeCloseTo(20 * t, 6);
    expect(made.max[1] - 20).toBeCloseTo(20 * t, 2);
    const bar = Math.PI * 400 * 100 - Math.PI * 100 * 50;
    expect(made.volumeMm3).toBeGreaterThan(bar);
    // No more than the whole of the widest section would hold.
    expect(made.volumeMm3).toBeLessThan(Math.PI * 400 * 100 * (1 + (20 * t) / 20) * (1 + (20 * t) / 50));
  });

  test('a cross is widened along its sides, corners staying sharp', () => {
    const { casting, undrafted } = piecesOf(
      (s) => {
        const at = (x: number, y: number) => ({ at: [s.at('X', x), s.at('Y', y)] as [never, never] });
        s.body({
          type: 'prism',
          axis: 'Z',
          ends: [s.at('Z', 0), s.at('Z', 30)],
          corners: [at(0, 0), at(60, 0), at(60, 20), at(20, 20), at(20, 60), at(0, 60)],
        });
      },
      (s) => green(s, 0),
    );
    // An L of 60 × 60 with legs of 20, every side moved out by g: A + perimeter · g + (5 − 1) · g².
    const area = (g: number) => 2000 + 240 * g + 4 * g * g;
    expect(measured(casting).volumeMm3).toBeCloseTo((30 / 6) * (area(30 * t) + 4 * area(15 * t) + area(0)), 3);
    expect(undrafted).toEqual([]);
  });

  test('what it needs and is not said is asked for', () => {
    expect(piecesOf(block, { moulding: 'loose pattern in green sand' }).unknown).toEqual([
      { is: 'field', field: 'up' },
      { is: 'field', field: 'parting' },
    ]);
    expect(piecesOf(block, { draft: '40' }).unknown).toEqual([{ is: 'written', field: 'draft', text: '40' }]);
    const across = piecesOf(block, (s) => ({ ...green(s, 0), up: '+X' }));
    expect(across.unknown).toEqual([{ is: 'field', field: 'parting' }]);
  });
});

test('a lug is cast on', () => {
  const { casting, unknown } = piecesOf(block, (s) => ({
    lugs: [
      {
        name: 'chucking piece',
        axis: 'X',
        ends: [
          { station: s.at('X', 100), beyond: '-5' },
          { station: s.at('X', 100), beyond: '25' },
        ],
        across: [
          [
            { station: s.at('Y', 0), beyond: '20' },
            { station: s.at('Y', 60), beyond: '-20' },
          ],
          [
            { station: s.at('Z', 0), beyond: '10' },
            { station: s.at('Z', 0), beyond: '40 mm' },
          ],
        ],
      },
    ],
  }));
  expect(unknown).toEqual([]);
  expect(measured(casting).volumeMm3).toBeCloseTo(300_000 + 25 * 20 * 30, 4);
});

test('a body without a shape is named, with what it lacks', () => {
  const { unknown } = piecesOf((s) => {
    block(s);
    s.body({
      type: 'block',
      x: [s.at('X', 0), 'station:nowhere' as never],
      y: [s.at('Y', 0), s.at('Y', 60)],
      z: [s.at('Z', 0), s.at('Z', 50)],
    });
  });
  expect(unknown).toEqual([
    { is: 'body', body: 'body:b2' },
    { is: 'station', station: 'station:nowhere' },
  ]);
});
