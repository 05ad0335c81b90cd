import { describe, expect, test } from 'vitest';
import { dimensionId, stationId } from '../../../../tests/support/facts.ts';
import {
  blockOf,
  drilled,
  operation,
  operationId,
  type RouteGiven,
  routeBody,
  routeBodyId,
  routePart,
  setup,
  setupId,
} from '../../../../tests/support/route-part.ts';
import { checkRoute } from './order-faults.ts';
import { proposeOrder } from './propose-order.ts';

const stations: NonNullable<RouteGiven['stations']> = {
  left: ['X', 0],
  right: ['X', 100],
  front: ['Y', 0],
  back: ['Y', 60],
  foot: ['Z', 0],
  top: ['Z', 40],
  cx: ['X', 50, 'centreline'],
  cy: ['Y', 30, 'centreline'],
};
const sizes: NonNullable<RouteGiven['sizes']> = {
  bore: ['diameter', '25'],
  core: ['diameter', '20'],
  tapped: ['thread', 'M8'],
};
const box = routeBody('box', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'top']));
const machined = { adds: false, finish: 'machined' } as const;
const bore = routeBody('bore', drilled('top', 'foot', 'bore'), machined);
const tapped = routeBody('tapped', drilled('top', 'foot', 'tapped'), machined);

const check = (given: RouteGiven) => checkRoute(routePart({ stations, sizes, bodies: [box], ...given }));

test('a part without operations says nothing', () => {
  expect(check({ bodies: [box, bore] })).toEqual({ constraints: [], faults: [], unmade: [] });
});

test('a pair that stands the wrong way round is a fault, the right way round is none', () => {
  const a = operation('a', 'bore', { from: [stationId('foot')] });
  const b = operation('b', 'mill', { makes: [stationId('foot')] });
  expect(check({ operations: [a, b] }).faults).toMatchObject([
    { is: 'order', constraint: { first: b.id, next: a.id, why: { is: 'from', surface: stationId('foot') } } },
  ]);
  expect(check({ operations: [b, a] })).toMatchObject({ faults: [], constraints: [{ first: b.id, next: a.id }] });
});

test('a ring is named once, beside the pair of it that stands the wrong way round', () => {
  const a = operation('a', 'mill', { makes: [stationId('foot')], from: [stationId('top')] });
  const b = operation('b', 'mill', { makes: [stationId('top')], from: [stationId('foot')] });
  const { faults, constraints } = check({ operations: [a, b] });
  expect(faults.map(({ is }) => is)).toEqual(['order', 'ring']);
  expect(proposeOrder([a, b], constraints).is).toBe('ring');
});

test('a set-up that begins after one of its own operations', () => {
  const u = setup('u', { state: { is: 'after', operation: operationId('b') } });
  const operations = [operation('a', 'turn', { setup: u.id }), operation('b', 'face', { setup: u.id })];
  expect(check({ setups: [u], operations }).faults).toContainEqual({
    is: 'own-state',
    setup: u.id,
    operation: operationId('b'),
  });
});

describe('made twice', () => {
  const make = (name: string, process: Parameters<typeof operation>[1], leaves = '') =>
    operation(name, process, { makes: [stationId('top')], leaves });
  const faultsOf = (...operations: readonly ReturnType<typeof operation>[]) =>
    check({ operations }).faults.map(({ is }) => is);

  test('with nothing left for the second', () => {
    expect(faultsOf(make('a', 'mill'), make('b', 'grind'))).toEqual(['made-twice']);
    expect(faultsOf(make('a', 'mill', '0.3'), make('b', 'grind'))).toEqual([]);
    expect(faultsOf(make('a', 'mill'), make('b', 'scrape'))).toEqual([]);
  });

  test('a hole that several tools work on is made once', () => {
    const hole = (process: 'drill' | 'tap' | 'countersink') =>
      operation(process, process, { makes: [routeBodyId('tapped')] });
    expect(
      check({ bodies: [box, tapped], operations: [hole('drill'), hole('countersink'), hole('tap')] }).faults,
    ).toEqual([]);
  });
});

describe('without a hole', () => {
  const tap = operation('tap', 'tap', { makes: [routeBodyId('tapped')] });

  test('nothing to tap in', () => {
    expect(check({ bodies: [box, tapped], operations: [tap] }).faults).toEqual([
      { is: 'no-hole', operation: tap.id, body: routeBodyId('tapped') },
    ]);
  });

  test('drilled by body, or by its size', () => {
    for (const made of [routeBodyId('tapped'), dimensionId('tapped')]) {
      const drill = operation('drill', 'drill', { makes: [made] });
      expect(check({ bodies: [box, tapped], operations: [drill, tap] }).faults).toEqual([]);
    }
  });

  test('bored in a core of its own, or beside one on the same centre', () => {
    const boring = operation('bore', 'bore', { makes: [routeBodyId('bore')] });
    expect(check({ bodies: [box, bore], operations: [boring] }).faults).toHaveLength(1);
    const core = routeBody('core', drilled('top', 'foot', 'core'), { adds: false, finish: 'cored' });
    expect(check({ bodies: [box, core, bore], operations: [boring] }).faults).toEqual([]);
    expect(check({ bodies: [box, { ...bore, finish: 'cored' }], operations: [boring] }).faults).toEqual([]);
  });

  test('of what follows a boring out of the solid, the boring is at fault', () => {
    const operations = [
      operation('bore', 'bore', { makes: [routeBodyId('bore')] }),
      operation('ream', 'ream', { makes: [routeBodyId('bore')] }),
    ];
    expect(check({ bodies: [box, bore], operations }).faults).toMatchObject([
      { is: 'no-hole', operation: operationId('bore') },
    ]);
  });
});

test('a rough face is measured from in one set-up only', () => {
  const from = [stationId('left')];
  const setups = [setup('u'), setup('v')];
  const inSetup = (name: string, set: string) => operation(name, 'mill', { from, setup: setupId(set) });
  expect(check({ setups, operations: [inSetup('a', 'u'), inSetup('b', 'u')] }).faults).toEqual([]);
  expect(check({ setups, operations: [inSetup('a', 'u'), inSetup('b', 'v')] }).faults).toEqual([
    { is: 'rough-twice', surface: stationId('left'), operations: [operationId('a'), operationId('b')] },
  ]);
  const face = operation('face', 'mill', { makes: from, setup: setupId('u') });
  expect(check({ setups, operations: [face, inSetup('a', 'u'), inSetup('b', 'v')] }).faults).toEqual([]);
});

test('machined bodies that nothing makes are listed, those made by their size are not', () => {
  const drill = operation('drill', 'drill', { makes: [dimensionId('tapped')] });
  expect(check({ bodies: [box, bore, tapped], operations: [drill] }).unmade).toEqual([routeBodyId('bore')]);
});

test('an order that is proposed and taken has no fault of order left', () => {
  const operations = [
    operation('turn', 'turn', { from: [dimensionId('bore')], setup: setupId('v') }),
    operation('tap', 'tap', { makes: [routeBodyId('tapped')], setup: setupId('w') }),
    operation('bore', 'bore', { makes: [dimensionId('bore')], from: [stationId('foot')], setup: setupId('u') }),
    operation('drill', 'drill', { makes: [routeBodyId('tapped')], setup: setupId('w') }),
    operation('foot', 'mill', { makes: [stationId('foot')], setup: setupId('x') }),
  ];
  const given = { bodies: [box, tapped], setups: ['u', 'v', 'w', 'x'].map((name) => setup(name)), operations };
  const before = check(given);
  expect(before.faults.filter(({ is }) => is === 'order').length).toBeGreaterThan(0);
  const proposal = proposeOrder(operations, before.constraints);
  if (proposal.is === 'ring') throw new Error('a ring');
  const byId = new Map(operations.map((one) => [one.id, one]));
  const after = check({ ...given, operations: proposal.order.map((id) => byId.get(id)!) });
  expect(after.faults.filter(({ is }) => is === 'order')).toEqual([]);
});
