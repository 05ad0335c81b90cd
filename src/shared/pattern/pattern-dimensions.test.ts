import { expect, test } from 'vitest';
import { castingOf, makes, patternPart } from '../../../tests/support/pattern-part.ts';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { Casting } from '../build/casting.ts';
import { dimensionsOf } from '../build/look-up.ts';
import type { Operation } from '../build/operation.ts';
import { alloyNamed } from '../tables/alloys.ts';
import { contractionsOf } from './contraction.ts';
import { patternDimensions } from './pattern-dimensions.ts';
import { patternPieces } from './pattern-pieces.ts';
import { stockOf } from './stock.ts';

type Sketch = ReturnType<typeof sketchBodies>;

function rowsOf(draw: (s: Sketch) => { over?: Partial<Casting>; operations?: readonly Operation[] }, alloy = 'A356') {
  const s = sketchBodies();
  const { over = {}, operations = [] } = draw(s);
  const part = patternPart(s.records(), s.part.id);
  const casting = castingOf(s.part.id, over);
  const given = { ...part, casting, operations };
  const stock = stockOf(given);
  const pieces = patternPieces({ ...given, shifts: stock.shifts });
  const contractions = contractionsOf({
    casting,
    material: alloy,
    alloy: alloyNamed(alloy),
    here: [],
    before: [],
  });
  const dimensions = dimensionsOf(part.build, s.part.id);
  const rows = patternDimensions({ ...part, dimensions, contractions, stock, pieces });
  return (name: string) => rows.find(({ of }) => of === `dimension:b-${name}`);
}

const block = (s: Sketch) =>
  s.body({
    type: 'block',
    x: [s.at('X', 0), s.at('X', 100)],
    y: [s.at('Y', 0), s.at('Y', 60)],
    z: [s.at('Z', 0), s.at('Z', 40)],
  });
const bore = (s: Sketch, diameter: number, finish: 'cored' | 'machined') =>
  s.body(
    {
      type: 'cylinder',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 40)],
      centre: [s.at('X', 50), s.at('Y', 30)],
      diameter: s.size('diameter', diameter),
    },
    { adds: false, finish },
  );

test('finished, casting and pattern beside one another', () => {
  const row = rowsOf((s) => {
    block(s);
    return { operations: [makes(s.part.id, 'mill', s.at('X', 0), s.at('X', 100), s.at('Z', 40))], over: { up: '+Z' } };
  });
  // RMA G 1.4 and half of DCTG 11 at 100 mm, 2.2, on each face; ISO 8062: 100 + 2 × 1.4 + 4.4 / 2.
  expect(row('X100')).toMatchObject({ finishedMm: 100, stockMm: [1.4 + 2.2, 1.4 + 2.2], along: ['X'], draftMm: 0 });
  expect(row('X100')!.castMm).toBeCloseTo(107.2, 12);
  expect(row('X100')!.patternMm).toBeCloseTo(107.2 * 1.013, 12);
  expect(row('X100')!.roughMm).toBeCloseTo(105, 12);
  // The casting of 107.2 mm may be 5 mm of DCTG 11 in all from the least to the most.
  expect(row('X100')!.go![0]).toBeCloseTo(104.7 * 1.013, 12);
  expect(row('X100')!.go![1]).toBeCloseTo(109.7 * 1.013, 12);
  // One face, looking up: 1 mm more than the tables; ISO 8062: 40 + 1.4 + 3.6 / 2.
  expect(row('Z40')!.castMm).toBeCloseTo(44.6, 12);
  expect(row('Z40')!.roughMm).toBeCloseTo(43.2, 12);
  // As cast: DCTG 11 of 60 mm is 4 mm.
  expect(row('Y60')).toMatchObject({ castMm: 60, roughMm: undefined });
  expect(row('Y60')!.go![0]).toBeCloseTo(58 * 1.013, 12);
  expect(row('Y60')!.stray.minus).toBeCloseTo((60 * 1.013) / 1.0182 - 60, 12);
});

test('a bore that is drawn with its stock', () => {
  const row = rowsOf((s) => {
    block(s);
    bore(s, 34, 'cored');
    bore(s, 40, 'machined');
    return { operations: [makes(s.part.id, 'bore', s.size('diameter', 40))] };
  });
  expect(row('diameter-34')).toMatchObject({ finishedMm: 34, castMm: 34, along: ['X', 'Y'] });
  expect(row('diameter-40')).toMatchObject({ finishedMm: 40, castMm: 34, stockMm: [-3, -3] });
  // ISO 8062: 40 − 2 × 1.4 − 3.6 / 2.
  expect(row('diameter-40')!.roughMm).toBeCloseTo(35.4, 12);
});

test('a bore that an operation makes is cast smaller', () => {
  const row = rowsOf((s) => {
    block(s);
    bore(s, 40, 'cored');
    return { operations: [makes(s.part.id, 'bore', s.size('diameter', 40))] };
  });
  expect(row('diameter-40')!.castMm).toBeCloseTo(35.4, 12);
  expect(row('diameter-40')!.roughMm).toBeCloseTo(35.4, 12);
});

test('what is cut into solid metal is no size of the pattern; a closed hole has none on it', () => {
  const row = rowsOf((s) => {
    block(s);
    bore(s, 10, 'machined');
    return {};
  });
  expect(row('diameter-10')).toBeUndefined();
  const closed = rowsOf((s) => {
    block(s);
    bore(s, 6, 'cored');
    return { over: { closeUnder: '8' } };
  });
  expect(closed('diameter-6')).toMatchObject({ isClosed: true, patternMm: undefined, go: undefined });
});

test('contracting otherwise along each axis, a circle becomes an oval', () => {
  const row = rowsOf((s) => {
    block(s);
    bore(s, 40, 'cored');
    return { over: { contraction: ['1', '1.5', '2'] } };
  });
  expect(row('diameter-40')!.patternMm).toBeCloseTo(40 * 1.0125, 12);
  expect(row('diameter-40')!.oval![0]).toBeCloseTo(40.4, 12);
  expect(row('diameter-40')!.oval![1]).toBeCloseTo(40.6, 12);
  expect(row('Z40')!.patternMm).toBeCloseTo(40.8, 12);
});

test('without a contraction there is no pattern size', () => {
  const row = rowsOf((s) => {
    block(s);
    return {};
  }, 'moonmetal');
  expect(row('X100')).toMatchObject({ castMm: 100, patternMm: undefined, go: undefined });
});

test('draft adds to lengths across the draw at the parting', () => {
  const row = rowsOf((s) => {
    block(s);
    const parting = { station: s.at('Z', 0), beyond: '' };
    return { over: { moulding: 'loose pattern in green sand', up: '+Z', parting } };
  });
  expect(row('X100')!.draftMm).toBeCloseTo(2 * 40 * Math.tan((2 * Math.PI) / 180), 12);
  expect(row('Z40')!.draftMm).toBe(0);
});
