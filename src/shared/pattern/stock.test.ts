import { describe, expect, test } from 'vitest';
import { castingOf, makes, patternPart } from '../../../tests/support/pattern-part.ts';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { StationId } from '../base/ids.ts';
import type { Body } from '../build/body.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import { exactVolume } from '../solid/exact-volume.ts';
import { placeShifted } from './shifted-body.ts';
import { stockOf } from './stock.ts';

/** A block of 100 × 60 × 40 with whatever is drawn besides. */
function casting(draw?: (s: ReturnType<typeof sketchBodies>) => void) {
  const s = sketchBodies();
  const block = s.body({
    type: 'block',
    x: [s.at('X', 0), s.at('X', 100)],
    y: [s.at('Y', 0), s.at('Y', 60)],
    z: [s.at('Z', 0), s.at('Z', 40)],
  });
  draw?.(s);
  const part = patternPart(s.records(), s.part.id);
  const plan = (operations: readonly Operation[], over: Partial<Casting> = {}) =>
    stockOf({ ...part, casting: castingOf(s.part.id, over), operations });
  return { s, block, part, plan, make: makes.bind(undefined, s.part.id) };
}

/** Required machining allowance G at 63 to 100 mm: 1.4; DCTG 11 there: ± 2.2. */
const TABLES = 1.4 + 2.2;

describe('a face that an operation makes', () => {
  test('gets the tables’ stock on the side where the metal is not', () => {
    const { s, block, part, plan, make } = casting();
    const { rows, shifts, allowance } = plan([make('mill', s.at('Z', 40), s.at('X', 0))], { up: '+Z' });
    expect(allowance).toMatchObject({ grade: 'G', gradeFrom: 'starting value', requiredMm: 1.4, halfBandMm: 2.2 });
    expect(rows.map(({ of, looks, isCope, stockMm, from }) => [of, looks, isCope, stockMm, from])).toEqual([
      // Faces that look up get 1 mm more.
      [s.at('Z', 40), 1, true, TABLES + 1, 'tables'],
      [s.at('X', 0), -1, false, TABLES, 'tables'],
    ]);
    const moved = placeShifted(block, part.numbers, shifts.get(block.id)!);
    expect(moved.ok && exactVolume(moved.value)).toBeCloseTo((100 + TABLES) * 60 * (40 + TABLES + 1), 8);
  });

  test('stock written for a face goes before the tables’, nought included', () => {
    const { s, plan, make } = casting();
    const operation = make('face', s.at('Z', 40), s.at('Z', 0));
    const { rows } = plan([operation], {
      stock: [
        { station: s.at('Z', 40), written: '2.5 mm' },
        { station: s.at('Z', 0), written: '0' },
      ],
    });
    expect(rows.map(({ stockMm, from }) => [stockMm, from])).toEqual([
      [2.5, 'written'],
      [0, 'written'],
    ]);
    expect(rows[0]!.by).toEqual([{ is: 'operation', operation: operation.id }, { is: 'written' }]);
  });

  test('a text that is no length is asked for, and the tables serve meanwhile', () => {
    const { s, plan, make } = casting();
    const stock = [{ station: s.at('Z', 40), written: '3 kg' }];
    expect(plan([make('face', s.at('Z', 40))], { stock, up: '-Z' }).rows[0]).toMatchObject({
      stockMm: TABLES,
      unknown: [{ is: 'written', text: '3 kg' }],
    });
  });

  test('what a hole cuts through at the face moves with it', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body(
        {
          type: 'cylinder',
          axis: 'Z',
          ends: [sketch.at('Z', 0), sketch.at('Z', 40)],
          centre: [sketch.at('X', 50), sketch.at('Y', 30)],
          diameter: sketch.size('diameter', 32),
        },
        { adds: false, finish: 'cored' },
      );
    });
    const { rows, shifts } = plan([make('face', s.at('Z', 40))]);
    expect(rows[0]).toMatchObject({ looks: 1, stockMm: TABLES });
    expect([...shifts.get('body:b2' as Body['id'])!]).toEqual([['shape/ends/1', TABLES]]);
  });

  test('a boss that stands on the face does not turn it about', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body({
        type: 'cylinder',
        axis: 'Z',
        ends: [sketch.at('Z', 40), sketch.at('Z', 70)],
        centre: [sketch.at('X', 50), sketch.at('Y', 30)],
        diameter: sketch.size('diameter', 50),
      });
    });
    expect(plan([make('mill', s.at('Z', 40))]).rows[0]).toMatchObject({ looks: 1, stockMm: TABLES });
    expect(plan([make('mill', s.at('Z', 70))]).rows[0]).toMatchObject({ looks: 1 });
  });

  test('the floor of a pocket looks into it', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body(
        {
          type: 'pocket',
          axis: 'Z',
          ends: [sketch.at('Z', 15), sketch.at('Z', 40)],
          from: [sketch.at('X', 20), sketch.at('Y', 10)],
          to: [sketch.at('X', 80), sketch.at('Y', 50)],
        },
        { adds: false },
      );
    });
    expect(plan([make('mill', s.at('Z', 15))]).rows[0]).toMatchObject({ looks: 1, stockMm: TABLES });
    expect(plan([make('mill', s.at('X', 20))]).rows[0]).toMatchObject({ looks: 1 });
    expect(plan([make('mill', s.at('X', 80))]).rows[0]).toMatchObject({ looks: -1 });
  });

  test('a station without a face, and one without a place, are said', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.at('Z', 20);
    });
    expect(plan([make('face', s.at('Z', 20))]).rows[0]).toMatchObject({
      looks: undefined,
      stockMm: undefined,
      unknown: [{ is: 'face', of: s.at('Z', 20) }],
    });
    const nowhere = 'station:nowhere' as StationId;
    expect(plan([], { stock: [{ station: nowhere, written: '3' }] }).rows[0]!.unknown).toHaveLength(1);
  });

  test('faces that meet and leave nothing bare have no side', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body({
        type: 'block',
        x: [sketch.at('X', 0), sketch.at('X', 100)],
        y: [sketch.at('Y', 0), sketch.at('Y', 60)],
        z: [sketch.at('Z', 40), sketch.at('Z', 55)],
      });
    });
    expect(plan([make('mill', s.at('Z', 40))]).rows[0]!.unknown).toEqual([{ is: 'direction', station: s.at('Z', 40) }]);
  });

  test('which way is up is asked for where it matters', () => {
    const { s, plan, make } = casting();
    expect(plan([make('mill', s.at('Z', 40))]).unknown).toEqual([{ is: 'field', field: 'up' }]);
    expect(plan([]).unknown).toEqual([]);
  });
});

describe('a size that an operation makes', () => {
  const bored = () =>
    casting((sketch) => {
      const centre: [StationId, StationId] = [sketch.at('X', 50), sketch.at('Y', 30)];
      const axis = 'Z';
      const boss = { type: 'cylinder', axis, centre, diameter: sketch.size('diameter', 50) } as const;
      sketch.body({ ...boss, ends: [sketch.at('Z', 40), sketch.at('Z', 70)], bore: sketch.size('diameter', 25) });
      sketch.body(
        {
          type: 'cylinder',
          axis,
          centre,
          ends: [sketch.at('Z', 0), sketch.at('Z', 40)],
          diameter: sketch.size('diameter', 25),
        },
        { adds: false, finish: 'cored' },
      );
    });
  test('a boss grows and a bore shrinks by two allowances and half the tolerance of its own size', () => {
    const { s, plan, make } = bored();
    const { rows, shifts } = plan([make('turn', s.size('diameter', 50)), make('bore', s.size('diameter', 25))]);
    // DCTG 11: 3.6 mm in all at 40 to 63 mm, 3.2 mm at 16 to 25 mm.
    expect(rows.map(({ looks, stockMm }) => [looks, stockMm])).toEqual([
      [1, 1.4 + 4 / 4],
      [-1, 1.4 + 3.2 / 4],
    ]);
    const boss = shifts.get('body:b2' as Body['id'])!;
    expect(boss.get('shape/diameter')).toBeCloseTo(2 * 1.4 + 4 / 2, 12);
    expect(boss.get('shape/bore')).toBeCloseTo(-(2 * 1.4 + 3.2 / 2), 12);
    expect(shifts.get('body:b3' as Body['id'])!.get('shape/diameter')).toBeCloseTo(-(2 * 1.4 + 3.2 / 2), 12);
  });
});

describe('stock that is drawn', () => {
  test('is what a machined body takes off', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body(
        {
          type: 'block',
          x: [sketch.at('X', 0), sketch.at('X', 100)],
          y: [sketch.at('Y', 0), sketch.at('Y', 60)],
          z: [sketch.at('Z', 37), sketch.at('Z', 45)],
        },
        { adds: false, finish: 'machined' },
      );
    });
    const { rows, shifts } = plan([make('mill', s.at('Z', 37))], { up: '+Z' });
    expect(rows).toMatchObject([{ of: s.at('Z', 37), looks: 1, isCope: true, from: 'drawn' }]);
    expect(rows[0]!.stockMm).toBeCloseTo(3, 9);
    expect(shifts.size).toBe(0);
  });
  test('between a cored hole and the bored one', () => {
    const { s, plan, make } = casting((sketch) => {
      const centre: [StationId, StationId] = [sketch.at('X', 50), sketch.at('Y', 30)];
      const ends: [StationId, StationId] = [sketch.at('Z', 0), sketch.at('Z', 40)];
      const cylinder = { type: 'cylinder', axis: 'Z', ends, centre } as const;
      sketch.body({ ...cylinder, diameter: sketch.size('diameter', 34) }, { adds: false, finish: 'cored' });
      sketch.body({ ...cylinder, diameter: sketch.size('diameter', 40) }, { adds: false, finish: 'machined' });
    });
    const { rows } = plan([make('bore', s.size('diameter', 40))]);
    expect(rows).toMatchObject([{ of: s.size('diameter', 40), looks: -1, from: 'drawn', stockMm: 3 }]);
  });
  test('of a pocket that is cut from solid metal its floor alone has a depth over it', () => {
    const { s, plan } = casting((sketch) => {
      sketch.body(
        {
          type: 'pocket',
          axis: 'Z',
          ends: [sketch.at('Z', 15), sketch.at('Z', 40)],
          from: [sketch.at('X', 20), sketch.at('Y', 10)],
          to: [sketch.at('X', 80), sketch.at('Y', 50)],
        },
        { adds: false, finish: 'machined' },
      );
    });
    expect(plan([]).rows).toMatchObject([{ of: s.at('Z', 15), looks: 1, from: 'drawn', stockMm: 25 }]);
  });
  test('a hole drilled into solid metal needs none', () => {
    const { s, plan, make } = casting((sketch) => {
      sketch.body(
        {
          type: 'hole',
          axis: 'Z',
          from: sketch.at('Z', 40),
          to: sketch.at('Z', 10),
          centre: [sketch.at('X', 50), sketch.at('Y', 30)],
          diameter: sketch.size('diameter', 8),
        },
        { adds: false, finish: 'machined' },
      );
    });
    expect(plan([make('drill', s.size('diameter', 8), s.at('Z', 10))]).rows).toEqual([]);
  });
});

test('the face of a mirrored copy', () => {
  const s = sketchBodies();
  s.body(
    {
      type: 'block',
      x: [s.at('X', 30), s.at('X', 50)],
      y: [s.at('Y', 0), s.at('Y', 60)],
      z: [s.at('Z', 0), s.at('Z', 40)],
    },
    { repeats: [{ type: 'mirror', axis: 'X', about: s.at('X', 0) }] },
  );
  const outside = s.at('X', -50);
  const plan = stockOf({
    ...patternPart(s.records(), s.part.id),
    casting: castingOf(s.part.id),
    operations: [makes(s.part.id, 'mill', outside)],
  });
  expect(plan.rows[0]).toMatchObject({ of: outside, looks: -1, stockMm: TABLES, unknown: [] });
  // The body's own face moves outwards, and its image with it.
  expect([...plan.shifts.get('body:b1' as Body['id'])!]).toEqual([['shape/x/1', TABLES]]);
});

test('a body that is machined all over has stock all over', () => {
  const { s, plan, part } = casting((sketch) => {
    sketch.body(
      {
        type: 'cylinder',
        axis: 'Z',
        ends: [sketch.at('Z', 40), sketch.at('Z', 70)],
        centre: [sketch.at('X', 50), sketch.at('Y', 30)],
        diameter: sketch.size('diameter', 50),
      },
      { finish: 'machined' },
    );
  });
  const { rows, shifts } = plan([]);
  expect(rows.map(({ of, looks }) => [of, looks])).toEqual([
    [s.at('Z', 40), -1],
    [s.at('Z', 70), 1],
    [s.size('diameter', 50), 1],
  ]);
  // The block below is not machined: its own face stays.
  expect(shifts.has('body:b1' as Body['id'])).toBe(false);
  expect(part.bodies).toHaveLength(2);
});

test('beyond the tables nothing is guessed', () => {
  const s = sketchBodies();
  s.body({
    type: 'block',
    x: [s.at('X', 0), s.at('X', 1200)],
    y: [s.at('Y', 0), s.at('Y', 60)],
    z: [s.at('Z', 0), s.at('Z', 40)],
  });
  const plan = stockOf({
    ...patternPart(s.records(), s.part.id),
    casting: castingOf(s.part.id, { up: '+Z' }),
    operations: [makes(s.part.id, 'mill', s.at('Z', 40))],
  });
  expect(plan.rows[0]).toMatchObject({ stockMm: undefined, from: undefined });
  expect(plan.unknown).toEqual([{ is: 'table', sizeMm: 1200 }]);
});
