import { describe, expect, test } from 'vitest';
import { dimensionId, partId } from '../../../../tests/support/facts.ts';
import {
  blockOf,
  drilled,
  operation,
  type RouteGiven,
  routeBody,
  routeBodyId,
  routePart,
} from '../../../../tests/support/route-part.ts';
import { drillsFor, reamDrillsFor, tapDrillsFor } from './drill-choice.ts';
import { holeSchedule } from './hole-schedule.ts';

const stations: NonNullable<RouteGiven['stations']> = {
  left: ['X', 0],
  right: ['X', 100],
  front: ['Y', 0],
  back: ['Y', 60],
  foot: ['Z', 0],
  low: ['Z', 15],
  top: ['Z', 40],
  cx: ['X', 50, 'centreline'],
  cy: ['Y', 30, 'centreline'],
};
const sizes: NonNullable<RouteGiven['sizes']> = {
  m8: ['thread', 'M8'],
  fine: ['thread', 'M8x0.9'],
  quarter: ['thread', '1/4-20 UNC'],
  left8: ['thread', 'M8 LH'],
  clear: ['diameter', '9'],
  odd: ['diameter', '10.37'],
  pin: ['diameter', '12'],
  lost: ['diameter', ''],
  four: ['count', '4'],
  pitch: ['length', '20'],
  head: ['diameter', '14'],
  deep: ['length', '8'],
};
const machined = { adds: false, finish: 'machined' } as const;
const hole = (name: string, size: string, to = 'foot', over: Parameters<typeof drilled>[3] = {}) =>
  routeBody(name, drilled('top', to, size, over), machined);
const box = routeBody('box', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'top']));
const given = (over: RouteGiven): RouteGiven => ({ stations, sizes, ...over, bodies: [box, ...(over.bodies ?? [])] });
const linesOf = (over: RouteGiven) => holeSchedule([routePart(given(over))]).parts[0]?.lines ?? [];

test('alike holes stand in one line with their number, copies counted', () => {
  const row = routeBody('row', drilled('top', 'foot', 'm8'), {
    ...machined,
    repeats: [{ type: 'row', axis: 'X', count: dimensionId('four'), pitch: dimensionId('pitch') }],
  });
  expect(linesOf({ bodies: [row, hole('one', 'm8'), hole('short', 'm8', 'low')] })).toMatchObject([
    { thread: 'M8', count: 1, depthMm: 25, bodies: [routeBodyId('short')] },
    { thread: 'M8', count: 5, depthMm: 40, bodies: [routeBodyId('row'), routeBodyId('one')] },
  ]);
});

test('a thread has the drill of the table, and the nearest of the other system', () => {
  const [m8] = linesOf({ bodies: [hole('a', 'm8')] });
  expect(m8).toMatchObject({
    pitchMm: 1.25,
    diameterMm: 8,
    drill: { best: { name: '6.8 mm' }, inch: { name: '17/64 in' } },
  });
  const [quarter] = linesOf({ bodies: [hole('a', 'quarter')] });
  expect(quarter).toMatchObject({ thread: '1/4-20', drill: { best: { name: 'No 7' }, metric: { name: '5.1 mm' } } });
  const [fine] = linesOf({ bodies: [hole('a', 'fine')] });
  expect(fine).toMatchObject({ thread: 'M8x0.9', drill: { best: { name: '7.1 mm' }, table: undefined } });
  expect(linesOf({ bodies: [hole('a', 'left8')] })[0]).toMatchObject({ thread: 'M8 LH' });
});

test('a plain hole says which screws it lets through', () => {
  const [clear] = linesOf({ bodies: [hole('a', 'clear')] });
  expect(clear).toMatchObject({ opened: 'drilled', drill: { best: { name: '9 mm' } } });
  expect(clear!.clears.map(({ screw, hole: { fit } }) => [screw, fit])).toEqual([['M8', 'medium']]);
  expect(linesOf({ bodies: [hole('a', 'odd')] })[0]!.clears).toEqual([]);
});

test('a head is part of the line', () => {
  const headed = hole('a', 'clear', 'foot', {
    counterbore: { diameter: dimensionId('head'), depth: dimensionId('deep') },
  });
  expect(linesOf({ bodies: [headed, hole('b', 'clear')] })).toMatchObject([
    { counterbore: { diameterMm: 14, depthMm: 8 }, count: 1 },
    { counterbore: undefined, count: 1 },
  ]);
});

describe('opened otherwise than by a drill alone', () => {
  test('reamed where an operation reams it, or its limits ask for it', () => {
    const ream = operation('ream', 'ream', { makes: [dimensionId('pin')] });
    expect(linesOf({ bodies: [hole('a', 'pin')], operations: [ream] })[0]).toMatchObject({
      opened: 'reamed',
      reamedFor: 'operation',
      drill: { best: { name: '11.7 mm' } },
    });
    const part = routePart(given({ bodies: [hole('a', 'pin')] }));
    // H7 of 12 mm: 0.018 mm (ISO 286); IT8 is 0.027 mm.
    const dimensions = part.dimensions.map((one) => ({
      ...one,
      resolved: {
        ...one.resolved,
        limits: { lower: 12, upper: 12.018, origin: 'written', row: 'as written' } as const,
      },
    }));
    expect(holeSchedule([{ ...part, dimensions }]).parts[0]!.lines[0]).toMatchObject({
      opened: 'reamed',
      reamedFor: 'limits',
    });
  });

  test('bored, or poured with a core', () => {
    const bore = operation('bore', 'bore', { makes: [routeBodyId('a')] });
    expect(linesOf({ bodies: [hole('a', 'pin')], operations: [bore] })[0]).toMatchObject({
      opened: 'bored',
      drill: undefined,
    });
    const cored = { ...hole('a', 'pin'), finish: 'cored' as const };
    expect(linesOf({ bodies: [cored] })[0]).toMatchObject({ opened: 'cored', drill: undefined });
  });
});

test('throughout the build, parts are taken as often as they are made', () => {
  const one = routePart(given({ bodies: [hole('a', 'm8'), hole('b', 'm8', 'low')], part: { quantity: 3 } }));
  const other = routePart(given({ bodies: [hole('c', 'm8'), hole('d', 'clear')] }));
  const named = { ...other, part: { ...other.part, id: partId('table') } };
  expect(holeSchedule([one, named]).build).toMatchObject([
    { thread: 'M8', count: 7, parts: [partId('column'), partId('table')] },
    { thread: '', diameterMm: 9, count: 1, parts: [partId('table')] },
  ]);
});

test('what has no size is named, not left out', () => {
  const schedule = holeSchedule([routePart(given({ bodies: [hole('a', 'lost'), hole('b', 'm8')] }))]);
  expect(schedule.unknown).toEqual([{ part: partId('column'), body: routeBodyId('a') }]);
  expect(schedule.parts[0]!.lines).toHaveLength(1);
});

test('a part without holes is not listed', () => {
  expect(holeSchedule([routePart(given({}))])).toEqual({ parts: [], build: [], unknown: [] });
});

describe('drills', () => {
  test('the nearest of each system, the nearer of both first', () => {
    expect(drillsFor(8.5)).toMatchObject({ best: { name: '8.5 mm' }, inch: { name: 'Q' } });
    expect(drillsFor(6.5278)).toMatchObject({ best: { name: 'F' }, metric: { name: '6.5 mm' } });
    expect(drillsFor(400)).toMatchObject({ best: undefined, metric: undefined, inch: undefined });
  });

  test('before a reamer a thinner one', () => {
    for (const diameter of [3, 5, 6.35, 8, 12, 20, 30]) {
      const { best, metric, inch } = reamDrillsFor(diameter);
      for (const drill of [best, metric, inch]) if (drill) expect(drill.diameterMm).toBeLessThan(diameter - 0.04);
      expect(diameter - best!.diameterMm).toBeLessThan(0.8);
    }
  });

  test('a thread without a row has major diameter less pitch', () => {
    expect(tapDrillsFor(undefined, 6.75).best?.name).toBe('17/64 in');
    expect(tapDrillsFor('M8', 6.75).best?.name).toBe('6.8 mm');
  });
});
