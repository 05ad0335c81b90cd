import { unreachable } from '../base/assert.ts';
import type { PartId, StationId } from '../base/ids.ts';
import type { Amount, Place } from './amount.ts';
import { axesAcross, type SizeRole } from './body-uses.ts';
import type { Operation } from './operation.ts';
import { isProperTurn } from './proper-turn.ts';
import type { RecordId, RecordKind } from './records.ts';
import type { Fellow, Holding, PartCondition, Setup } from './setup.ts';
import { type Axis, axes } from './station.ts';

/** A set-up or an operation: what the plan of work is made of. */
export type Plan = Setup | Operation;

/** One record that a set-up or an operation names. */
export interface PlanUse {
  readonly id: RecordId;
  readonly kind: RecordKind;
  /** Whose it must be; undefined of a part, a machine or a set-up. */
  readonly of?: PartId;
  /** The axis that a station must lie along; undefined: any. */
  readonly axis?: Axis;
  /** What a size is taken for: it must serve as one of these. */
  readonly roles?: readonly SizeRole[];
  /** Where in the record it stands, parts joined by `/`. */
  readonly field: string;
  /** The record holds together without it too: where it goes, it is taken out (`withoutGone`). */
  readonly loose: boolean;
}

/** Two stations that must lie along one axis, whichever it is. */
export interface PlanPair {
  readonly stations: readonly [StationId, StationId];
  readonly field: string;
}

export interface PlanUses {
  readonly uses: readonly PlanUse[];
  readonly pairs: readonly PlanPair[];
}

const round: readonly SizeRole[] = ['diameter'];
/** Jaws close on flats too, and the drill of a slot is called by the slot's width. */
const roundOrWide: readonly SizeRole[] = ['diameter', 'width'];
const long: readonly SizeRole[] = ['length'];

interface Gather {
  readonly station: (id: StationId, of: PartId, axis: Axis | undefined, field: string) => void;
  readonly places: (ends: readonly [Place, Place], axis: Axis | undefined, field: string) => void;
  readonly size: (amount: Amount, roles: readonly SizeRole[], field: string) => void;
  readonly state: (state: PartCondition, of: PartId, field: string) => void;
}

function gatherer(part: PartId, uses: PlanUse[], pairs: PlanPair[]): Gather {
  const station: Gather['station'] = (id, of, axis, field) => {
    uses.push({ id, kind: 'station', of, ...(axis === undefined ? {} : { axis }), field, loose: false });
  };
  return {
    station,
    places(ends, axis, field) {
      ends.forEach((end, i) => {
        station(end.station, part, axis, `${field}/${i}/station`);
      });
      if (axis === undefined) pairs.push({ stations: [ends[0].station, ends[1].station], field: `${field}/1/station` });
    },
    size(amount, roles, field) {
      if (amount.size === undefined) return;
      uses.push({ id: amount.size, kind: 'dimension', of: part, roles, field: `${field}/size`, loose: false });
    },
    state(state, of, field) {
      if (state.is !== 'after') return;
      uses.push({ id: state.operation, kind: 'operation', of, field: `${field}/operation`, loose: false });
    },
  };
}

/** Gathers what a set-up names, in the order of its fields. */
function usesOfSetup(setup: Setup): PlanUses {
  const uses: PlanUse[] = [];
  const pairs: PlanPair[] = [];
  const gather = gatherer(setup.part, uses, pairs);
  const { axis, through } = setup.line;
  uses.push({ id: setup.part, kind: 'part', field: 'part', loose: false });
  if (setup.machine !== undefined) uses.push({ id: setup.machine, kind: 'machine', field: 'machine', loose: true });
  gather.state(setup.state, setup.part, 'state');
  setup.fellows.forEach((fellow, i) => {
    usesOfFellow(setup.part, fellow, `fellows/${i}`, uses, gather);
  });
  setup.fixtures.forEach(({ ends, shape }, i) => {
    gather.places(ends, axis, `fixtures/${i}/ends`);
    if (shape.is === 'round') gather.size(shape.diameter, round, `fixtures/${i}/shape/diameter`);
  });
  through?.forEach((station, i) => {
    gather.station(station, setup.part, axesAcross(axis)[i]!, `line/through/${i}`);
  });
  usesOfHolding(setup.part, setup.holding, axis, gather);
  return { uses, pairs };
}

function usesOfFellow(first: PartId, fellow: Fellow, field: string, uses: PlanUse[], gather: Gather): void {
  const { part, turn } = fellow;
  uses.push({ id: part, kind: 'part', field: `${field}/part`, loose: true });
  gather.state(fellow.state, part, `${field}/state`);
  axes.forEach((axis, i) => {
    const [own, other] = fellow.meets[i]!;
    gather.station(own, first, axis, `${field}/meets/${i}/0`);
    // Where the turn is none, that is what will be said; no axis can be asked for.
    const along = isProperTurn(turn) ? axes[turn.findIndex((signed) => signed[1] === axis)] : undefined;
    gather.station(other, part, along, `${field}/meets/${i}/1`);
  });
}

function usesOfHolding(part: PartId, holding: Holding, axis: Axis, { station, places, size }: Gather): void {
  switch (holding.as) {
    case 'between centres':
      return;
    case 'three-jaw chuck':
    case 'four-jaw chuck':
      if (holding.ends) places(holding.ends, axis, 'holding/ends');
      size(holding.diameter, roundOrWide, 'holding/diameter');
      return;
    case 'face plate':
      if (holding.seat) station(holding.seat.station, part, axis, 'holding/seat/station');
      return;
    case 'steady':
      if (holding.at) station(holding.at.station, part, axis, 'holding/at/station');
      size(holding.diameter, round, 'holding/diameter');
      return;
    case 'vise':
      // The jaws may close along any axis; so may the table lie under any side.
      if (holding.ends) places(holding.ends, undefined, 'holding/ends');
      size(holding.depth, long, 'holding/depth');
      return;
    case 'clamped to the table':
      if (holding.seat) station(holding.seat.station, part, undefined, 'holding/seat/station');
      return;
    default:
      unreachable(holding);
  }
}

/** Gathers what an operation names, in the order of its fields. */
function usesOfOperation(operation: Operation): PlanUses {
  const { part, setup, makes, from, after, cut, tool } = operation;
  const uses: PlanUse[] = [];
  const pairs: PlanPair[] = [];
  const gather = gatherer(part, uses, pairs);
  uses.push({ id: part, kind: 'part', field: 'part', loose: false });
  if (setup !== undefined) uses.push({ id: setup, kind: 'setup', field: 'setup', loose: true });
  for (const [list, field] of [
    [makes, 'makes'],
    [from, 'from'],
    [after, 'after'],
  ] as const) {
    list.forEach((id, i) => {
      uses.push({ id, kind: kindOfId(id), of: part, field: `${field}/${i}`, loose: true });
    });
  }
  if (cut) {
    // Whether they lie along the set-up's line is for the rules to say: the line may be changed later.
    gather.places(cut.ends, undefined, 'cut/ends');
    gather.size(cut.diameter, roundOrWide, 'cut/diameter');
    gather.size(cut.inner, roundOrWide, 'cut/inner');
  }
  gather.size(tool.diameter, roundOrWide, 'tool/diameter');
  return { uses, pairs };
}

const kindOfId = (id: RecordId): RecordKind => id.slice(0, id.indexOf(':')) as RecordKind;

const known = new WeakMap<Plan, PlanUses>();

/** All that a set-up or an operation names, in the order of its fields; gathered once for each record. */
export function usesOfPlan(plan: Plan): PlanUses {
  const before = known.get(plan);
  if (before) return before;
  const found = plan.kind === 'setup' ? usesOfSetup(plan) : usesOfOperation(plan);
  known.set(plan, found);
  return found;
}

/** Whether a set-up holds the part: as the one worked upon, or as a fellow of it. */
export const holdsPart = (setup: Setup, part: PartId): boolean =>
  setup.part === part || setup.fellows.some((fellow) => fellow.part === part);

/** The same record without what it names loosely and is gone: fellows, the machine, what an operation makes and needs. */
export function withoutGone(plan: Plan, gone: ReadonlySet<string>): Plan {
  if (plan.kind === 'setup') {
    const { machine, ...rest } = plan;
    const fellows = plan.fellows.filter(({ part }) => !gone.has(part));
    return { ...rest, ...(machine === undefined || gone.has(machine) ? {} : { machine }), fellows };
  }
  const { setup, ...rest } = plan;
  return {
    ...rest,
    ...(setup === undefined || gone.has(setup) ? {} : { setup }),
    makes: plan.makes.filter((id) => !gone.has(id)),
    from: plan.from.filter((id) => !gone.has(id)),
    after: plan.after.filter((id) => !gone.has(id)),
  };
}
