import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import type { AxisDrawing } from '../../src/shared/drawing/drawing.ts';
import { partId, sketch } from '../support/sketch-build.ts';

vi.setConfig({ testTimeout: 120_000 });

interface Row {
  readonly from: number;
  readonly to: number;
  /** In sixteenths of an inch, so that mm and inch writing can say exactly the same. */
  readonly sixteenths: number;
  readonly stray: number;
}

const anyRows = fc.array(
  fc.record({
    from: fc.nat({ max: 6 }),
    to: fc.nat({ max: 6 }),
    sixteenths: fc.integer({ min: -400, max: 400 }),
    stray: fc.constantFrom(0.1, 0.5, 2),
  }),
  { minLength: 1, maxLength: 10 },
);

const mmOf = ({ sixteenths }: Row): number => (sixteenths * 25.4) / 16;

interface Writing {
  readonly datum?: number;
  readonly reversed?: boolean;
  readonly value?: (row: Row) => string;
  readonly limits?: (row: Row) => string;
}

function axisOf(rows: readonly Row[], { datum = 0, reversed = false, value, limits }: Writing = {}): AxisDrawing {
  const build = sketch().part('p');
  for (let i = 0; i < 7; i++) build.station(`s${i}`, { datum: i === datum });
  rows.forEach((row, i) => {
    const sixteenths = reversed ? -row.sixteenths : row.sixteenths;
    const [from, to] = reversed ? [row.to, row.from] : [row.from, row.to];
    const written = { ...row, sixteenths };
    const text = value ? value(written) : String(mmOf(written));
    build.between(`e${i}`, `s${from}`, `s${to}`, text, { limits: limits ? limits(row) : `±${row.stray}` });
  });
  return createDrawing(build.build()).axesOf(partId('p'))[0]!;
}

const placesOf = (axis: AxisDrawing): readonly number[] => axis.stations.map(({ at }) => at);

/** What explains the one contradiction; where there are several faults, which loop is told first is free. */
function explanationOf(axis: AxisDrawing): unknown {
  const [first, ...more] = axis.conflicts;
  return more.length > 0 ? 'several' : first?.suspects.map(({ dimension }) => dimension).sort();
}

function expectNear(actual: readonly number[], wanted: readonly number[]): void {
  expect(actual).toHaveLength(wanted.length);
  actual.forEach((value, i) => {
    expect(Math.abs(value - wanted[i]!)).toBeLessThan(1e-9);
  });
}

test('another datum shifts every place of its group alike, where the drawing is a tree', () => {
  fc.assert(
    fc.property(anyRows, fc.nat({ max: 6 }), (rows, datum) => {
      // Without loops there is one way to every station, so only the origin differs.
      const tree = rows.filter(
        (_, i) => axisOf(rows.slice(0, i + 1)).loops.length === axisOf(rows.slice(0, i)).loops.length,
      );
      const one = axisOf(tree);
      const other = axisOf(tree, { datum });
      const shift = one.stations[datum]!.at;
      const group = one.stations[datum]!.group;
      const of = (axis: AxisDrawing) => placesOf(axis).filter((_, i) => one.stations[i]!.group === group);
      expectNear(
        of(other),
        of(one).map((at) => at - shift),
      );
    }),
    { numRuns: 200 },
  );
});

test('a dimension written the other way with its sign turned says the same', () => {
  fc.assert(
    fc.property(anyRows, (rows) => {
      const one = axisOf(rows);
      const other = axisOf(rows, { reversed: true });
      expect(other.stations).toEqual(one.stations);
      expect(other.groups).toEqual(one.groups);
      expect(explanationOf(other)).toEqual(explanationOf(one));
      expect(other.loops.map(({ verdict }) => verdict)).toEqual(one.loops.map(({ verdict }) => verdict));
    }),
    { numRuns: 300 },
  );
});

test('mm and inch writing agree', () => {
  fc.assert(
    fc.property(anyRows, (rows) => {
      const mm = axisOf(rows);
      const inch = axisOf(rows, {
        value: ({ sixteenths }) => `${sixteenths / 16} in`,
        limits: ({ stray }) => `±${stray} mm`,
      });
      expectNear(placesOf(inch), placesOf(mm));
      expectNear(
        inch.stations.map(({ band }) => band.rss),
        mm.stations.map(({ band }) => band.rss),
      );
      // Which dimension is suspected first may differ: a slip of the pen shows in the unit that was written.
      expect(inch.conflicts.length > 0).toBe(mm.conflicts.length > 0);
    }),
    { numRuns: 300 },
  );
});
