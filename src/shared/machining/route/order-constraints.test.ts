import { describe, expect, test } from 'vitest';
import { solidFact } from '../../../../tests/support/body-facts.ts';
import { dimensionId, partId, stationId } from '../../../../tests/support/facts.ts';
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
import { orderConstraints } from './order-constraints.ts';

const stations: NonNullable<RouteGiven['stations']> = {
  left: ['X', 0],
  right: ['X', 100],
  lug: ['X', 120],
  front: ['Y', 0],
  back: ['Y', 60],
  foot: ['Z', 0],
  top: ['Z', 40],
  floor: ['Z', 10],
  cx: ['X', 50, 'centreline'],
  cy: ['Y', 30, 'centreline'],
};
const box = routeBody('box', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'top']));
const bore = routeBody('bore', drilled('top', 'foot', 'bore'), { adds: false, finish: 'machined' });
const sizes: NonNullable<RouteGiven['sizes']> = { bore: ['diameter', '25'], boss: ['diameter', '60'] };

const constraintsOf = (given: RouteGiven) =>
  orderConstraints(routePart({ stations, sizes, bodies: [box, bore], ...given })).map(({ first, next, soft, why }) => [
    `${first.slice(10)}<${next.slice(10)}`,
    why.is,
    ...(soft ? ['wish'] : []),
  ]);

describe('what is measured from', () => {
  test('comes first; a surface that nothing makes, and one’s own, ask for nothing', () => {
    expect(
      constraintsOf({
        operations: [
          operation('bore', 'bore', { from: [stationId('foot'), stationId('left')], makes: [routeBodyId('bore')] }),
          operation('foot', 'mill', { from: [stationId('foot')], makes: [stationId('foot')] }),
        ],
      }),
    ).toEqual([['foot<bore', 'from']]);
  });

  test('a size as well', () => {
    expect(
      constraintsOf({
        operations: [
          operation('turn', 'turn', { from: [dimensionId('bore')] }),
          operation('bore', 'bore', { makes: [dimensionId('bore')] }),
        ],
      }),
    ).toEqual([['bore<turn', 'from']]);
  });
});

test('what is written to come after comes after; an operation of elsewhere asks for nothing', () => {
  expect(
    constraintsOf({
      operations: [operation('a', 'file', { after: [operationId('b'), operationId('z')] }), operation('b', 'file')],
    }),
  ).toEqual([['b<a', 'after']]);
});

test('a set-up from the state after an operation comes after it, with all that is done in it', () => {
  expect(
    constraintsOf({
      setups: [setup('u', { state: { is: 'after', operation: operationId('c') } })],
      operations: [
        operation('a', 'turn', { setup: setupId('u') }),
        operation('b', 'face', { setup: setupId('u') }),
        operation('c', 'saw'),
      ],
    }),
  ).toEqual([
    ['c<a', 'state'],
    ['c<b', 'state'],
  ]);
});

test('of a part that is held as a fellow the state of the fellow counts', () => {
  const other = setup('of another', {
    part: partId('table'),
    state: { is: 'after', operation: operationId('a') },
    fellows: [
      {
        part: partId('column'),
        state: { is: 'after', operation: operationId('b') },
        turn: ['+X', '+Y', '+Z'],
        meets: [
          [stationId('left'), stationId('left')],
          [stationId('front'), stationId('front')],
          [stationId('foot'), stationId('foot')],
        ],
      },
    ],
  });
  expect(
    constraintsOf({
      setups: [other],
      operations: [operation('a', 'bore', { setup: other.id }), operation('b', 'mill')],
    }),
  ).toEqual([['b<a', 'state']]);
});

describe('what holds the work', () => {
  const arbor = setup('arbor', {
    fixtures: [
      {
        name: 'arbor',
        what: 'arbor',
        ends: [
          { station: stationId('foot'), beyond: '-30' },
          { station: stationId('top'), beyond: '30' },
        ],
        shape: { is: 'round', diameter: { size: dimensionId('bore'), written: '' } },
        material: '',
        mass: '',
      },
    ],
  });

  test('a bore that an arbor goes through is bored first', () => {
    expect(
      constraintsOf({
        setups: [arbor],
        operations: [
          operation('turn', 'turn', { setup: setupId('arbor'), makes: [dimensionId('boss')] }),
          operation('bore', 'bore', { makes: [dimensionId('bore')] }),
        ],
      }),
    ).toEqual([['bore<turn', 'held']]);
  });

  test('one that is cored is there already', () => {
    const cored = routeBody('core', drilled('top', 'foot', 'bore'), { adds: false, finish: 'cored' });
    expect(
      constraintsOf({
        bodies: [box, cored],
        setups: [arbor],
        operations: [
          operation('turn', 'turn', { setup: setupId('arbor') }),
          operation('bore', 'bore', { makes: [dimensionId('bore')] }),
        ],
      }),
    ).toEqual([]);
  });

  test('a rough face holds until it is cut, and what is cut in the same holding does not hold it', () => {
    const chuck = (name: string) =>
      setup(name, {
        holding: {
          as: 'three-jaw chuck',
          ends: [
            { station: stationId('foot'), beyond: '' },
            { station: stationId('floor'), beyond: '' },
          ],
          diameter: { size: dimensionId('boss'), written: '' },
          inside: false,
          tailCentre: false,
        },
      });
    const operations = [
      operation('a', 'bore', { setup: setupId('u') }),
      operation('b', 'face', { setup: setupId('v'), makes: [stationId('foot'), stationId('floor')] }),
    ];
    // The foot is there as cast; the floor of a pocket that is still to be cut is not.
    expect(constraintsOf({ setups: [chuck('u'), setup('v')], operations })).toEqual([['b<a', 'held']]);
    const same = operations.map((one) => ({ ...one, setup: setupId('u') }));
    expect(constraintsOf({ setups: [chuck('u')], operations: same })).toEqual([]);
  });

  test('vise, face plate, table and steady hold by what they name', () => {
    const at = { station: stationId('floor'), beyond: '' };
    const holdings = [
      { as: 'vise', ends: [at, at], depth: { written: '' } },
      { as: 'face plate', seat: at, tailCentre: false },
      { as: 'clamped to the table', seat: at },
      { as: 'steady', at, diameter: { written: '' } },
    ] as const;
    for (const holding of holdings) {
      expect(
        constraintsOf({
          setups: [setup('u', { holding: holding as never })],
          operations: [
            operation('a', 'mill', { setup: setupId('u') }),
            operation('b', 'mill', { makes: [stationId('floor')] }),
          ],
        }),
        holding.as,
      ).toEqual([['b<a', 'held']]);
    }
  });
});

test('a hole is drilled, bored, then reamed, sunk and tapped', () => {
  const hole = routeBodyId('bore');
  const found = constraintsOf({
    operations: (['tap', 'countersink', 'ream', 'bore', 'drill'] as const).map((process) =>
      operation(process, process, { makes: [hole] }),
    ),
  });
  expect(found).toContainEqual(['drill<bore', 'hole']);
  expect(found).toContainEqual(['bore<ream', 'hole']);
  expect(found).toContainEqual(['countersink<tap', 'hole']);
  expect(found).toContainEqual(['ream<tap', 'hole']);
  expect(found).not.toContainEqual(['ream<countersink', 'hole']);
  expect(found).not.toContainEqual(['countersink<ream', 'hole']);
});

test('what leaves more stock on the same face comes first', () => {
  const top = stationId('top');
  expect(
    constraintsOf({
      operations: [
        operation('finish', 'mill', { makes: [top] }),
        operation('rough', 'mill', { makes: [top], leaves: '1' }),
        operation('half', 'mill', { makes: [top], leaves: '0.5 mm' }),
        operation('unread', 'mill', { makes: [top], leaves: 'some' }),
      ],
    }),
  ).toEqual([
    ['rough<finish', 'stock'],
    ['half<finish', 'stock'],
    ['rough<half', 'stock'],
  ]);
});

describe('a lug that is sawn off', () => {
  const lug = routeBody('lug', blockOf(['right', 'lug'], ['front', 'back'], ['foot', 'top']));
  const cut = (to: 'lug' | 'right', y: [string, string] = ['front', 'back']) =>
    routeBody('sawn', blockOf(['right', to], y, ['foot', 'top']), { adds: false, finish: 'machined' });
  const operations = [
    operation('saw', 'saw', { makes: [routeBodyId('sawn')] }),
    operation('mill', 'mill', { from: [stationId('lug')] }),
  ];

  test('is there for those who measure from it', () => {
    expect(constraintsOf({ bodies: [box, lug, cut('lug')], operations })).toEqual([['mill<saw', 'gone']]);
  });

  test('a saw that leaves half of the face leaves the face', () => {
    const half = { ...stations, half: ['Y', 25] as const };
    const bodies = [box, lug, cut('lug', ['front', 'half'])];
    expect(constraintsOf({ stations: half, bodies, operations })).toEqual([]);
  });

  test('a centreline never goes', () => {
    const bodies = [box, lug, cut('lug'), bore];
    const more = [operations[0]!, operation('drill', 'drill', { from: [stationId('cx')] })];
    expect(constraintsOf({ bodies, operations: more })).toEqual([]);
  });

  test('a cut down to a face makes the face and does not take it', () => {
    const over = routeBody('over', blockOf(['left', 'right'], ['front', 'back'], ['floor', 'top']), {
      adds: false,
      finish: 'machined',
    });
    const low = routeBody('low', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'floor']));
    expect(
      constraintsOf({
        bodies: [box, low, over],
        operations: [
          operation('mill', 'mill', { makes: [routeBodyId('over')] }),
          operation('drill', 'drill', { from: [stationId('floor')] }),
        ],
      }),
    ).toEqual([]);
  });

  test('a boss whose diameter is measured goes with all of it', () => {
    const boss = routeBody('boss', {
      type: 'cylinder',
      axis: 'Z',
      ends: [stationId('foot'), stationId('top')],
      centre: [stationId('cx'), stationId('cy')],
      diameter: dimensionId('bore'),
    });
    const all = routeBody('sawn', blockOf(['left', 'lug'], ['front', 'back'], ['foot', 'top']), {
      adds: false,
      finish: 'machined',
    });
    const more = [operations[0]!, operation('mill', 'mill', { from: [dimensionId('bore')] })];
    expect(constraintsOf({ bodies: [boss, all], operations: more })).toEqual([['mill<saw', 'gone']]);
  });
});

describe('datum first', () => {
  const operations = (over: { from?: readonly string[]; setup?: readonly [string, string] } = {}) => [
    operation('top', 'mill', {
      makes: [stationId('top')],
      from: (over.from ?? []).map(stationId),
      ...(over.setup && { setup: setupId(over.setup[0]) }),
    }),
    operation('foot', 'mill', { makes: [stationId('foot')], ...(over.setup && { setup: setupId(over.setup[1]) }) }),
  ];

  test('is a wish', () => {
    expect(constraintsOf({ operations: operations() })).toEqual([['foot<top', 'datum', 'wish']]);
  });

  test('not where it is measured from something else, or cut in the same holding', () => {
    expect(constraintsOf({ operations: operations({ from: ['floor'] }) })).toEqual([]);
    const setups = [setup('u'), setup('v')];
    expect(constraintsOf({ setups, operations: operations({ setup: ['u', 'u'] }) })).toEqual([]);
    expect(constraintsOf({ setups, operations: operations({ setup: ['u', 'v'] }) })).toHaveLength(1);
  });
});

describe('a hole beside a thin wall', () => {
  const slot = routeBody('slot', blockOf(['left', 'right'], ['front', 'back'], ['floor', 'top']), {
    adds: false,
    finish: 'machined',
  });
  const edge = (metalMm: number) =>
    solidFact({
      faces: {
        holes: [
          {
            body: routeBodyId('bore'),
            copy: 0,
            beside: routeBodyId('slot'),
            diameterMm: 25,
            centreMm: 12.5 + metalMm,
            metalMm,
            at: [0, 0, 0],
          },
        ],
      },
    });
  const operations = [
    operation('slot', 'mill', { makes: [routeBodyId('slot')] }),
    operation('drill', 'drill', { makes: [routeBodyId('bore')] }),
  ];
  const given = { bodies: [box, bore, slot], operations };

  test('is drilled before the wall gets thin', () => {
    expect(constraintsOf({ ...given, solid: edge(2) })).toEqual([['drill<slot', 'thin', 'wish']]);
    expect(constraintsOf({ ...given, solid: edge(0) })).toEqual([['drill<slot', 'thin', 'wish']]);
  });

  test('a wall of a quarter of the diameter stands', () => {
    expect(constraintsOf({ ...given, solid: edge(6.25) })).toEqual([]);
    expect(constraintsOf(given)).toEqual([]);
  });
});
