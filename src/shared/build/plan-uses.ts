import { unreachable } from '../base/assert.ts';
import type { PartId } from '../base/ids.ts';
import { axesAcross, type SizeRole } from './body-uses.ts';
import type { Casting } from './casting.ts';
import { castingWithout, pourWithout, usesOfCasting, usesOfPattern, usesOfPour } from './foundry-uses.ts';
import type { Operation } from './operation.ts';
import type { Pattern } from './pattern.ts';
import { type Gather, gatherer, type PlanPair, type PlanUse, type PlanUses } from './plan-use.ts';
import type { Pour } from './pour.ts';
import { isProperTurn } from './proper-turn.ts';
import type { BuildRecord, RecordId, RecordKind } from './records.ts';
import type { Fellow, Holding, PartCondition, Setup } from './setup.ts';
import { type Axis, axes } from './station.ts';

/**
 * What says how parts are made, from the pattern to the last operation: it names records of the drawing, machines, and other
 * plans.
 */
export type Plan = Setup | Operation | Casting | Pattern | Pour;

const planKinds: ReadonlySet<BuildRecord['kind']> = new Set<Plan['kind']>([
  'setup',
  'operation',
  'casting',
  'pattern',
  'pour',
]);

export const isPlan = (record: BuildRecord): record is Plan => planKinds.has(record.kind);

const round: readonly SizeRole[] = ['diameter'];
/** Jaws close on flats too, and the drill of a slot is called by the slot's width. */
const roundOrWide: readonly SizeRole[] = ['diameter', 'width'];
const long: readonly SizeRole[] = ['length'];

const state = (uses: PlanUse[], condition: PartCondition, of: PartId, field: string): void => {
  if (condition.is !== 'after') return;
  uses.push({ id: condition.operation, kind: 'operation', of, field: `${field}/operation`, loose: false });
};

/** Gathers what a set-up names, in the order of its fields. */
function usesOfSetup(setup: Setup): PlanUses {
  const uses: PlanUse[] = [];
  const pairs: PlanPair[] = [];
  const gather = gatherer(setup.part, uses, pairs);
  const { axis, through } = setup.line;
  uses.push({ id: setup.part, kind: 'part', field: 'part', loose: false });
  if (setup.machine !== undefined) uses.push({ id: setup.machine, kind: 'machine', field: 'machine', loose: true });
  state(uses, setup.state, setup.part, 'state');
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
  state(uses, fellow.state, part, `${field}/state`);
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

/** All that a plan names, in the order of its fields; gathered once for each record. */
export function usesOfPlan(plan: Plan): PlanUses {
  const before = known.get(plan);
  if (before) return before;
  const found = gathered(plan);
  known.set(plan, found);
  return found;
}

function gathered(plan: Plan): PlanUses {
  switch (plan.kind) {
    case 'setup':
      return usesOfSetup(plan);
    case 'operation':
      return usesOfOperation(plan);
    case 'casting':
      return usesOfCasting(plan);
    case 'pattern':
      return usesOfPattern(plan);
    case 'pour':
      return usesOfPour(plan);
    default:
      return unreachable(plan);
  }
}

/** Whether a set-up holds the part: as the one worked upon, or as a fellow of it. */
export const holdsPart = (setup: Setup, part: PartId): boolean =>
  setup.part === part || setup.fellows.some((fellow) => fellow.part === part);

/** The same record without what it names loosely and is gone: fellows, machines, what an operation makes, castings of a pour. */
export function withoutGone(plan: Plan, gone: ReadonlySet<string>): Plan {
  switch (plan.kind) {
    case 'setup':
      return setupWithout(plan, gone);
    case 'operation':
      return operationWithout(plan, gone);
    case 'casting':
      return castingWithout(plan, gone);
    case 'pattern':
      return plan;
    case 'pour':
      return pourWithout(plan, gone);
    default:
      return unreachable(plan);
  }
}

function setupWithout(plan: Setup, gone: ReadonlySet<string>): Setup {
  const { machine, ...rest } = plan;
  const fellows = plan.fellows.filter(({ part }) => !gone.has(part));
  return { ...rest, ...(machine === undefined || gone.has(machine) ? {} : { machine }), fellows };
}

function operationWithout(plan: Operation, gone: ReadonlySet<string>): Operation {
  const { setup, ...rest } = plan;
  return {
    ...rest,
    ...(setup === undefined || gone.has(setup) ? {} : { setup }),
    makes: plan.makes.filter((id) => !gone.has(id)),
    from: plan.from.filter((id) => !gone.has(id)),
    after: plan.after.filter((id) => !gone.has(id)),
  };
}
