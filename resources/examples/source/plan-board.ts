import { assert } from '../../../src/shared/base/assert.ts';
import type { BodyId, MachineId, OperationId, SetupId } from '../../../src/shared/base/ids.ts';
import type { Amount, Place } from '../../../src/shared/build/amount.ts';
import machineAdd from '../../../src/shared/build/commands/machine-add.ts';
import operationAdd, { type OperationFields } from '../../../src/shared/build/commands/operation-add.ts';
import setupAdd, { type SetupFields } from '../../../src/shared/build/commands/setup-add.ts';
import { bodiesOf, machinesOf, operationsOf, setupsOf } from '../../../src/shared/build/look-up.ts';
import type { Fellow, Fixture, Holding, PartCondition } from '../../../src/shared/build/setup.ts';
import type { Axis } from '../../../src/shared/build/station.ts';
import type { Board } from './board.ts';
import type {
  AmountSketch,
  BodyOf,
  Ends,
  FellowSketch,
  FixtureSketch,
  HoldingSketch,
  MachineSketch,
  OperationSketch,
  RouteSketch,
  SetupSketch,
  SizeOf,
  Spot,
  StateSketch,
} from './plan-sketch.ts';

export function drawMachine(board: Board, { name, type, figures, note }: MachineSketch): void {
  board.run(machineAdd, { type, set: { name, figures, note } }, `machine/${name}`);
}

/** Adds the set-ups and operations of a part, in the order of its route, behind those that are there. */
export function drawRoute(board: Board, { part, stretches }: RouteSketch): void {
  for (const { in: place, operations } of stretches) {
    let setup: SetupId | undefined;
    if (place === 'bench') setup = undefined;
    else if ('setup' in place) setup = setupNamed(board, place.part, place.setup);
    else setup = drawSetup(board, part, place);
    for (const one of operations) drawOperation(board, part, one, setup);
  }
}

export function drawSetup(board: Board, part: string, sketch: SetupSketch): SetupId {
  const { name, machine, state, allowance, fellows, fixtures, axis, through, headEnd, holding, note } = sketch;
  const [first, second] = acrossOf(axis);
  const set: SetupFields = {
    name,
    machine: machineNamed(board, machine),
    state: stateOf(board, part, state ?? 'after the last'),
    allowance: allowance ?? '',
    fellows: (fellows ?? []).map((fellow) => fellowOf(board, part, fellow)),
    fixtures: (fixtures ?? []).map((fixture) => fixtureOf(board, part, fixture)),
    line: {
      axis,
      through: [board.station(part, first, through[0]), board.station(part, second, through[1])],
    },
    headEnd: headEnd ?? 'low',
    holding: holdingOf(board, part, holding),
    note: note ?? '',
  };
  board.run(setupAdd, { part: board.part(part), set }, `${part}/setup/${name}`);
  return setupNamed(board, part, name);
}

/** @param before the name of the operation to stand before; else it goes to the end of the route. */
function drawOperation(
  board: Board,
  part: string,
  sketch: OperationSketch,
  setup: SetupId | undefined,
  before?: string,
): void {
  const { process, name, cut, tool, overhang, teeth, edge } = sketch;
  const set: OperationFields = {
    name,
    ...(setup && { setup }),
    makes: (sketch.makes ?? []).map((one) => idOf(board, part, one)),
    from: (sketch.from ?? []).map((one) => idOf(board, part, one) as ReturnType<typeof surfaceOf>),
    after: (sketch.after ?? []).map((one) => operationNamed(board, part, one)),
    leaves: sketch.leaves ?? '',
    ...(cut && {
      cut: {
        ends: endsOf(board, part, cut.ends),
        diameter: amountOf(board, part, cut.diameter),
        inner: amountOf(board, part, cut.inner),
      },
    }),
    tool: {
      edge: edge ?? 'HSS',
      diameter: amountOf(board, part, tool),
      overhang: overhang ?? '',
      ...(teeth === undefined ? {} : { teeth }),
    },
    chosen: sketch.chosen ?? {},
    note: sketch.note ?? '',
  };
  board.run(
    operationAdd,
    {
      part: board.part(part),
      process,
      set,
      ...(before === undefined ? {} : { before: operationNamed(board, part, before) }),
    },
    `${part}/operation/${name}`,
  );
}

export const machineNamed = (board: Board, name: string): MachineId => named(machinesOf(board.build()), name);
export const setupNamed = (board: Board, part: string, name: string): SetupId =>
  named(setupsOf(board.build(), board.part(part)), name);
export const operationNamed = (board: Board, part: string, name: string): OperationId =>
  named(operationsOf(board.build(), board.part(part)), name);
const bodyNamed = (board: Board, part: string, name: string): BodyId =>
  named(bodiesOf(board.build(), board.part(part)), name);

function named<I extends string>(records: readonly { readonly id: I; readonly name: string }[], name: string): I {
  const found = records.filter((record) => record.name === name);
  assert(found.length === 1, `there is one record called ${name}, not ${found.length}`);
  return found[0]!.id;
}

const acrossOf = (axis: Axis): readonly [Axis, Axis] =>
  axis === 'X' ? ['Y', 'Z'] : axis === 'Y' ? ['X', 'Z'] : ['X', 'Y'];

const surfaceOf = (board: Board, part: string, one: Spot | SizeOf) =>
  one.is === 'spot' ? board.station(part, one.axis, one.station) : board.dimension(part, one.dimension);

const idOf = (board: Board, part: string, one: Spot | SizeOf | BodyOf) =>
  one.is === 'body' ? bodyNamed(board, part, one.body) : surfaceOf(board, part, one);

const placeOf = (board: Board, part: string, { axis, station, beyond }: Spot): Place => ({
  station: board.station(part, axis, station),
  beyond,
});

export const endsOf = (board: Board, part: string, [from, to]: Ends): [Place, Place] => [
  placeOf(board, part, from),
  placeOf(board, part, to),
];

export function amountOf(board: Board, part: string, amount: AmountSketch | undefined): Amount {
  if (amount === undefined) return { written: '' };
  return typeof amount === 'string'
    ? { written: amount }
    : { size: board.dimension(part, amount.dimension), written: '' };
}

function stateOf(board: Board, part: string, state: StateSketch): PartCondition {
  if (state === 'as cast' || state === 'finished') return { is: state };
  if (state !== 'after the last') return { is: 'after', operation: operationNamed(board, part, state.after) };
  const last = operationsOf(board.build(), board.part(part)).at(-1);
  return last ? { is: 'after', operation: last.id } : { is: 'as cast' };
}

function fellowOf(board: Board, first: string, { part, state, meets }: FellowSketch): Fellow {
  const [x, y, z] = (['X', 'Y', 'Z'] as const).map(
    (axis, i) => [board.station(first, axis, meets[i]![0]), board.station(part, axis, meets[i]![1])] as const,
  );
  return {
    part: board.part(part),
    state: stateOf(board, part, state),
    turn: ['+X', '+Y', '+Z'],
    meets: [[...x!], [...y!], [...z!]],
  };
}

function fixtureOf(board: Board, part: string, { name, what, ends, shape, material }: FixtureSketch): Fixture {
  return {
    name,
    what,
    ends: endsOf(board, part, ends),
    shape:
      typeof shape === 'string' || 'is' in shape
        ? { is: 'round', diameter: amountOf(board, part, shape) }
        : { is: 'block', across: [mm(shape[0]), mm(shape[1])] },
    material,
    mass: '',
  };
}

const mm = ([from, to]: readonly [number, number]): [string, string] => [`${from} mm`, `${to} mm`];

export function holdingOf(board: Board, part: string, sketch: HoldingSketch): Holding {
  switch (sketch.as) {
    case 'between centres':
      return { as: sketch.as };
    case 'three-jaw chuck':
    case 'four-jaw chuck':
      return {
        as: sketch.as,
        ends: endsOf(board, part, sketch.ends),
        diameter: amountOf(board, part, sketch.diameter),
        inside: sketch.inside ?? false,
        tailCentre: sketch.tailCentre ?? false,
      };
    case 'face plate':
      return { as: sketch.as, seat: placeOf(board, part, sketch.seat), tailCentre: sketch.tailCentre ?? false };
    case 'vise':
      return { as: sketch.as, ends: endsOf(board, part, sketch.ends), depth: amountOf(board, part, sketch.depth) };
    case 'clamped to the table':
      return { as: sketch.as, seat: placeOf(board, part, sketch.seat) };
  }
}
