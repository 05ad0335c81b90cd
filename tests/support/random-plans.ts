import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import type { Amount, Place } from '../../src/shared/build/amount.ts';
import { axesAcross, type SizeRole, servesAs } from '../../src/shared/build/body-uses.ts';
import type { OperationFields } from '../../src/shared/build/commands/operation-add.ts';
import type { Order } from '../../src/shared/build/commands/registry.ts';
import type { SetupFields } from '../../src/shared/build/commands/setup-add.ts';
import {
  bodiesOf,
  dimensionsOf,
  machinesOf,
  operationsOf,
  partsOf,
  setupsOf,
  stationsOf,
} from '../../src/shared/build/look-up.ts';
import type { Machine } from '../../src/shared/build/machine.ts';
import { edges, type Operation, processes } from '../../src/shared/build/operation.ts';
import type { Build } from '../../src/shared/build/records.ts';
import {
  type Fellow,
  type Fixture,
  fixtureKinds,
  type Holding,
  type PartCondition,
  type Setup,
} from '../../src/shared/build/setup.ts';
import { type Axis, axes } from '../../src/shared/build/station.ts';
import { genericMachines } from '../../src/shared/tables/generic-machines.ts';
import { machineFigures, machineTypes } from '../../src/shared/tables/machine-figures.ts';
import type { Dice } from './random-edits.ts';

export const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];
export const of = <T>(list: readonly [T, ...T[]], n: number): T => list[n % list.length]!;

/** Numbers out of one throw, as many as are asked for. */
export function stream({ kind, a, b, c }: Dice): () => number {
  let state = (a * 10_007 + b * 101 + c * 7 + kind + 1) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 8;
  };
}

/** Lengths as people write them, good and bad. */
const lengths = ['', '5', '-3', '2.5 mm', '1/4"', '12,5', 'about 3', '0', '250'] as const;
export const written = (next: () => number): string => of(lengths, next());

export interface Throw {
  readonly build: Build;
  readonly part: PartId;
  readonly next: () => number;
}

/**
 * An order about machines, set-ups and operations that the throw comes to in this build; some of them are refused, and all of
 * them may be.
 */
export function planOrderOf(build: Build, dice: Dice): Order | undefined {
  const next = stream(dice);
  const kind = dice.kind % 40;
  if (kind < 8) return machineOrderOf(build, kind, next);
  const part = pick(partsOf(build), dice.a)?.id;
  if (part === undefined) return undefined;
  const thrown: Throw = { build, part, next };
  return kind < 24 ? setupOrderOf(thrown, kind - 8) : operationOrderOf(thrown, kind - 24);
}

function machineOrderOf(build: Build, kind: number, next: () => number): Order | undefined {
  const machines = machinesOf(build);
  const machine = pick(machines, next());
  if (kind < 2 || !machine) {
    const row = pick(genericMachines, next())!;
    if (next() % 2) return { id: 'machine-add', params: { type: row.type, generic: row.id } };
    const params = { type: of(machineTypes, next()), set: { figures: figuresOf(next), name: `machine ${next() % 5}` } };
    return { id: 'machine-add', params: machine ? { ...params, before: machine.id } : params };
  }
  if (kind < 5) {
    const bed = [{ across: written(next), down: written(next) }];
    const sets = [{ figures: figuresOf(next) }, { bed }, { generic: next() % 2 > 0 }, { name: 'mine' }, { note: 'n' }];
    return { id: 'machine-set', params: { machine: machine.id, set: pick(sets, next())! } };
  }
  if (kind < 6) return { id: 'machine-move', params: { machine: machine.id, before: pick(machines, next())?.id } };
  if (kind < 7) {
    const other: Machine = { ...machine, id: `machine:shop${next() % 6}` as Machine['id'], name: 'of the shop' };
    return { id: 'machines-take', params: { machines: [{ ...machine, figures: figuresOf(next) }, other] } };
  }
  return { id: 'machine-remove', params: { machines: [machine.id] } };
}

function figuresOf(next: () => number): Record<string, string> {
  const keys = machineFigures[of(machineTypes, next())].map(({ key }) => key);
  return Object.fromEntries([0, 1].map(() => [pick(keys, next())!, written(next)]));
}

function setupOrderOf(thrown: Throw, kind: number): Order | undefined {
  const { build, part, next } = thrown;
  const setups = setupsOf(build, part);
  const setup = pick(setups, next());
  if (kind < 5 || !setup) {
    const axis = of(axes, next());
    const set: SetupFields = {
      machine: pick(machinesOf(build), next())?.id,
      line: lineOf(thrown, axis),
      headEnd: next() % 2 ? 'low' : 'high',
      allowance: written(next),
      holding: holdingOf(thrown, axis),
      fixtures: next() % 3 ? [] : [fixtureOf(thrown, axis)],
      fellows: next() % 3 ? [] : fellowsOf(thrown),
    };
    return { id: 'setup-add', params: { part, set } };
  }
  if (kind < 11) {
    const { axis } = setup.line;
    const sets: SetupFields[] = [
      { machine: next() % 2 ? pick(machinesOf(build), next())?.id : undefined },
      { state: stateOf(thrown, part) },
      { holding: holdingOf(thrown, axis) },
      { line: lineOf(thrown, next() % 4 ? axis : of(axes, next())) },
      { fixtures: [fixtureOf(thrown, axis), fixtureOf(thrown, axis)] },
      { fellows: fellowsOf(thrown) },
      { name: `set-up ${next() % 4}`, minutes: '20' },
    ];
    return { id: 'setup-set', params: { setup: setup.id, set: pick(sets, next())! } };
  }
  if (kind < 12) return { id: 'setup-copy', params: { setup: setup.id } };
  if (kind < 14) return { id: 'setup-move', params: { setup: setup.id, before: pick(setups, next())?.id } };
  return { id: 'setup-remove', params: { setups: [setup.id] } };
}

function operationOrderOf(thrown: Throw, kind: number): Order | undefined {
  const { build, part, next } = thrown;
  const operations = operationsOf(build, part);
  const operation = pick(operations, next());
  if (kind < 6 || !operation) {
    const before = next() % 3 ? undefined : operation?.id;
    const params = { part, process: of(processes, next()), set: operationFieldsOf(thrown) };
    return { id: 'operation-add', params: before === undefined ? params : { ...params, before } };
  }
  if (kind < 11) {
    const fields = Object.entries(operationFieldsOf(thrown));
    const one = pick(fields, next())!;
    const set = Object.fromEntries(next() % 2 ? [one] : fields) as OperationFields;
    return { id: 'operation-set', params: { changes: [{ operation: operation.id, set }] } };
  }
  if (kind < 12) {
    return { id: 'operation-move', params: { operation: operation.id, before: pick(operations, next())?.id } };
  }
  if (kind < 14) {
    const turned = next() % operations.length;
    const order = [...operations.slice(turned), ...operations.slice(0, turned)].map(({ id }) => id);
    return { id: 'operations-order', params: { part, order: next() % 5 ? order : order.slice(1) } };
  }
  return { id: 'operation-remove', params: { operations: [operation.id] } };
}

function operationFieldsOf(thrown: Throw): OperationFields {
  const { build, part, next } = thrown;
  const stations = stationsOf(build, part).map(({ id }) => id);
  const sizes = dimensionsOf(build, part).map(({ id }) => id);
  const bodies = bodiesOf(build, part).map(({ id }) => id);
  const some = <T>(list: readonly T[]): T[] => list.filter(() => next() % 4 === 0).slice(0, 5);
  const axis = of(axes, next());
  const setups = partsOf(build).flatMap(({ id }) => (next() % 3 ? [] : setupsOf(build, id)));
  const ends = endsOf(thrown, axis);
  const cut: Operation['cut'] = ends && {
    ends,
    diameter: amountOf(thrown, ['diameter', 'width']),
    inner: amountOf(thrown, ['diameter']),
  };
  return {
    makes: [...some(stations), ...some(sizes), ...some(bodies)],
    from: [...some(stations), ...some(sizes)],
    after: some(operationsOf(build, part).map(({ id }) => id)),
    setup: pick(next() % 4 ? setupsOf(build, part) : setups, next())?.id,
    leaves: written(next),
    cut: next() % 3 ? cut : undefined,
    tool: { edge: of(edges, next()), diameter: amountOf(thrown, ['diameter']), overhang: written(next) },
    chosen: { rpm: '200', feed: `${written(next)}/rev` },
  };
}

/** A station of the part along the axis, or now and then any other: that is refused. */
function stationOf({ build, part, next }: Throw, axis: Axis): StationId | undefined {
  return pick(stationsOf(build, part, next() % 20 ? axis : undefined), next())?.id;
}

export function placeOf(thrown: Throw, axis: Axis): Place | undefined {
  const station = stationOf(thrown, axis);
  return station && { station, beyond: written(thrown.next) };
}

export function endsOf(thrown: Throw, axis: Axis): [Place, Place] | undefined {
  const [from, to] = [placeOf(thrown, axis), placeOf(thrown, axis)];
  return from && to && [from, to];
}

function amountOf({ build, part, next }: Throw, roles: readonly SizeRole[]): Amount {
  const fitting = dimensionsOf(build, part).filter(
    ({ measure }) => next() % 20 === 0 || roles.some((role) => servesAs(measure, role)),
  );
  const size: DimensionId | undefined = next() % 2 ? pick(fitting, next())?.id : undefined;
  return { written: written(next), ...(size === undefined ? {} : { size }) };
}

function lineOf(thrown: Throw, axis: Axis): Setup['line'] {
  const [first, second] = axesAcross(axis).map((across) => stationOf(thrown, across));
  return first && second ? { axis, through: [first, second] } : { axis };
}

function stateOf({ build, next }: Throw, part: PartId): PartCondition {
  const operation = pick(operationsOf(build, part), next());
  if (operation && next() % 2) return { is: 'after', operation: operation.id };
  return { is: next() % 2 ? 'as cast' : 'finished' };
}

function holdingOf(thrown: Throw, axis: Axis): Holding {
  const { next } = thrown;
  const ends = endsOf(thrown, axis);
  const seat = placeOf(thrown, axis);
  const grip = {
    diameter: amountOf(thrown, ['diameter', 'width']),
    inside: next() % 2 > 0,
    tailCentre: next() % 2 > 0,
  };
  const ways: [Holding, ...Holding[]] = [
    { as: 'between centres' },
    { as: 'three-jaw chuck', ...(ends ? { ends } : {}), ...grip },
    { as: 'four-jaw chuck', ...(ends ? { ends } : {}), ...grip },
    { as: 'face plate', ...(seat ? { seat } : {}), tailCentre: false },
    { as: 'steady', ...(seat ? { at: seat } : {}), diameter: amountOf(thrown, ['diameter']) },
    { as: 'vise', ...(ends ? { ends } : {}), depth: amountOf(thrown, ['length']) },
    { as: 'clamped to the table', ...(seat ? { seat } : {}) },
  ];
  return of(ways, next());
}

function fixtureOf(thrown: Throw, axis: Axis): Fixture {
  const { next } = thrown;
  const ends = endsOf(thrown, axis) ?? [
    { station: 'station:none' as StationId, beyond: '' },
    { station: 'station:none' as StationId, beyond: '' },
  ];
  const across: [string, string] = [written(next), written(next)];
  return {
    name: next() % 2 ? '' : 'station:like an id',
    what: of(fixtureKinds, next()),
    ends,
    shape:
      next() % 2
        ? { is: 'round', diameter: amountOf(thrown, ['diameter']) }
        : { is: 'block', across: [across, across] },
    material: next() % 2 ? '' : 'steel',
    mass: next() % 2 ? '' : '1.2 kg',
  };
}

/** One other part, its axes as those of the first, or turned about Z, where it has stations along all of them. */
function fellowsOf(thrown: Throw): Fellow[] {
  const { build, next } = thrown;
  const part = pick(partsOf(build), next())!.id;
  const turn: Fellow['turn'] = next() % 2 ? ['+X', '+Y', '+Z'] : ['+Y', '-X', '+Z'];
  const meets = axes.map((axis) => {
    const own = stationOf(thrown, axis);
    const along = axes[turn.findIndex((signed) => signed[1] === axis)]!;
    const other = stationOf({ ...thrown, part }, along);
    return own && other ? ([own, other] as [StationId, StationId]) : undefined;
  });
  const [x, y, z] = meets;
  return x && y && z ? [{ part, state: stateOf(thrown, part), turn, meets: [x, y, z] }] : [];
}
