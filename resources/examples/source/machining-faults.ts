import operationMove from '../../../src/shared/build/commands/operation-move.ts';
import operationSet from '../../../src/shared/build/commands/operation-set.ts';
import operationsOrder from '../../../src/shared/build/commands/operations-order.ts';
import partSet from '../../../src/shared/build/commands/part-set.ts';
import setupRemove from '../../../src/shared/build/commands/setup-remove.ts';
import setupSet from '../../../src/shared/build/commands/setup-set.ts';
import { operationsOf } from '../../../src/shared/build/look-up.ts';
import type { Board } from './board.ts';
import { amountOf, drawSetup, endsOf, holdingOf, machineNamed, operationNamed, setupNamed } from './plan-board.ts';
import { at, size } from './plan-sketch.ts';

/** The arm is to be held on the face plate by its boss and bored on the lathe, as if its post did not go round with it. */
export function boreArmOnLathe(board: Board): void {
  const part = 'over-arm';
  board.run(setupSet, {
    setup: setupNamed(board, part, 'rod boring'),
    set: {
      machine: machineNamed(board, 'bench lathe'),
      headEnd: 'high',
      holding: holdingOf(board, part, { as: 'face plate', seat: at('Z', 'boss upper face') }),
      note: 'Strapped down by the boss.',
    },
  });
  board.run(partSet, {
    part: board.part(part),
    set: { note: 'The rod bore is bored after the seat is flat, the boss against the face plate.' },
  });
}

/** The column is bored first, as it comes from the mould, and then goes on a mandrel for foot and top. */
export function turnFootOnMandrel(board: Board): void {
  const part = 'guide column';
  const setup = drawSetup(board, part, {
    name: 'mandrel turning',
    machine: 'bench lathe',
    state: { after: 'ream ram bore' },
    allowance: '2 mm',
    axis: 'Z',
    through: ['bore line', 'bore line'],
    headEnd: 'high',
    holding: { as: 'between centres' },
    fixtures: [
      {
        name: 'mandrel',
        what: 'mandrel',
        ends: [at('Z', 'foot', '-7 mm'), at('Z', 'top face', '80 mm')],
        shape: size('ram bore'),
        material: 'silver steel',
      },
      {
        name: 'driving dog',
        what: 'driving dog',
        ends: [at('Z', 'top face', '64 mm'), at('Z', 'top face', '76 mm')],
        shape: '45 mm',
        material: 'silver steel',
      },
    ],
  });
  const face = (name: string, from: string, to: string, station: string) => ({
    operation: operationNamed(board, part, name),
    set: {
      setup,
      process: 'face' as const,
      cut: {
        ends: endsOf(board, part, [at('Z', station, from), at('Z', station, to)]),
        diameter: amountOf(board, part, '167 mm'),
        inner: amountOf(board, part, size('ram bore')),
      },
      tool: { diameter: amountOf(board, part, '8 mm'), overhang: '10 mm', teeth: 1 },
    },
  });
  const bored = ['drill ram bore', 'ream ram bore'].map((name) => operationNamed(board, part, name));
  const foot = face('mill foot', '-2 mm', '', 'foot');
  const top = face('face top', '2 mm', '', 'top face');
  board.run(setupSet, { setup: setupNamed(board, part, 'boring'), set: { state: { is: 'as cast' } } });
  board.run(operationSet, {
    changes: [
      { ...foot, set: { ...foot.set, name: 'face foot' } },
      top,
      ...bored.map((operation) => ({ operation, set: { from: [] } })),
    ],
  });
  board.run(setupRemove, { setups: [setupNamed(board, part, 'foot milling')] });
  const first = [...bored, foot.operation, top.operation];
  const others = operationsOf(board.build(), board.part(part))
    .map(({ id }) => id)
    .filter((id) => !first.includes(id));
  board.run(operationsOrder, { part: board.part(part), order: [...first, ...others] });
  board.run(partSet, {
    part: board.part(part),
    set: {
      note: 'Foot and top face are turned on a mandrel through the ram bore. A steel arbor may be left in the mould for the bore.',
    },
  });
}

/** The keyway is milled while the shaft is still bright bar at that end. */
export const millKeywayEarly = (board: Board): void =>
  board.run(operationMove, {
    operation: operationNamed(board, 'crankshaft', 'mill keyway'),
    before: operationNamed(board, 'crankshaft', 'turn flywheel seat'),
  });

export const spotFaceTooSlowly = (board: Board): void =>
  board.run(operationSet, {
    changes: [
      {
        operation: operationNamed(board, 'guide column', 'spot face column screws'),
        set: { chosen: { rpm: '120' } },
      },
    ],
  });
