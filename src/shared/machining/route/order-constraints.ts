import type { BodyId, OperationId, PartId, SetupId, StationId } from '../../base/ids.ts';
import type { Operation, Process } from '../../build/operation.ts';
import type { PartCondition, Setup } from '../../build/setup.ts';
import { THIN_BESIDE_HOLE } from '../../tables/cutting-practice.ts';
import { bodiesMade } from './made-holes.ts';
import { readPlain } from './read-operation.ts';
import { answersOf, type RoutePart } from './route-part.ts';
import { cutterOf, isThereAsCast, type Surface } from './surfaces.ts';

/** Why one operation has to come before another. */
export type OrderReason =
  /** The later one is located by, or measured from, what the first one makes. */
  | { readonly is: 'from'; readonly surface: Surface }
  /** Its set-up holds by what the first one makes, which is not there as cast. */
  | { readonly is: 'held'; readonly surface: Surface; readonly setup: SetupId }
  /** Written so. */
  | { readonly is: 'after' }
  /** Its set-up begins from the state after the first one. */
  | { readonly is: 'state'; readonly setup: SetupId }
  /** A hole is drilled before it is bored, reamed, tapped, countersunk or ground. */
  | { readonly is: 'hole'; readonly body: BodyId }
  /** The first one leaves more stock on the same thing. */
  | { readonly is: 'stock'; readonly thing: Operation['makes'][number] }
  /** The later one cuts away what the first one is measured from or held by. */
  | { readonly is: 'gone'; readonly surface: Surface; readonly body: BodyId }
  /** The datum of an axis is made before what is measured from it. Good practice: it can be otherwise. */
  | { readonly is: 'datum'; readonly surface: StationId; readonly datum: StationId }
  /** A hole is drilled while the wall beside it is still thick. Good practice. */
  | { readonly is: 'thin'; readonly body: BodyId; readonly beside: BodyId; readonly metalMm: number };

/** `first` has to come before `next`. */
export interface OrderConstraint {
  readonly first: OperationId;
  readonly next: OperationId;
  /** Good practice rather than need: an order that cannot have it is still an order. */
  readonly soft: boolean;
  readonly why: OrderReason;
}

/** Processes in the order in which one hole goes through them; equal ranks may come either way. */
const holeRank: Readonly<Partial<Record<Process, number>>> = {
  drill: 0,
  bore: 1,
  ream: 2,
  counterbore: 2,
  countersink: 2,
  tap: 3,
  grind: 4,
  lap: 5,
};

/** What the operations of a part ask of their order, in the list order of those that come later. Each pair and reason once. */
export function orderConstraints(of: RoutePart): readonly OrderConstraint[] {
  const { operations, bodies } = of;
  const list: OrderConstraint[] = [];
  const add = (first: Operation | undefined, next: Operation, why: OrderReason): void => {
    if (!first || first.id === next.id) return;
    list.push({ first: first.id, next: next.id, soft: why.is === 'datum' || why.is === 'thin', why });
  };
  const byId = new Map<string, Operation>(operations.map((one) => [one.id, one]));
  const setups = new Map<string, Setup>(of.setups.map((setup) => [setup.id, setup]));
  const firstMaker = makersOf(operations);
  for (const operation of operations) {
    const setup = operation.setup === undefined ? undefined : setups.get(operation.setup);
    for (const surface of new Set(operation.from)) {
      if (!operation.makes.includes(surface)) add(firstMaker.get(surface), operation, { is: 'from', surface });
    }
    for (const id of new Set(operation.after)) add(byId.get(id), operation, { is: 'after' });
    if (!setup) continue;
    const state = stateIn(setup, of.part.id);
    if (state?.is === 'after') add(byId.get(state.operation), operation, { is: 'state', setup: setup.id });
    for (const surface of heldBy(setup)) {
      const maker = firstMaker.get(surface);
      // What is cut in the same holding is not what holds it, and a rough surface holds until it is cut.
      if (maker?.setup === setup.id || isThereAsCast(surface, bodies)) continue;
      add(maker, operation, { is: 'held', surface, setup: setup.id });
    }
  }
  addHoles(of, add);
  addStock(of, add);
  addGone(of, setups, firstMaker, add);
  addDatums(of, firstMaker, add);
  addThin(of, add);
  return list;
}

/** How far a part has come when it is put in, as the one that is worked upon or as a fellow. */
const stateIn = (setup: Setup, part: PartId): PartCondition | undefined =>
  setup.part === part ? setup.state : setup.fellows.find((fellow) => fellow.part === part)?.state;

/** The first operation in list order that makes each thing. */
function makersOf(operations: readonly Operation[]): ReadonlyMap<string, Operation> {
  const makers = new Map<string, Operation>();
  for (const operation of operations)
    for (const thing of operation.makes) if (!makers.has(thing)) makers.set(thing, operation);
  return makers;
}

/** The stations and sizes that a set-up holds the work by. */
function heldBy({ holding, fixtures }: Setup): readonly Surface[] {
  const held = new Set<Surface>();
  switch (holding.as) {
    case 'between centres':
      break;
    case 'three-jaw chuck':
    case 'four-jaw chuck':
      for (const { station } of holding.ends ?? []) held.add(station);
      if (holding.diameter.size) held.add(holding.diameter.size);
      break;
    case 'face plate':
    case 'clamped to the table':
      if (holding.seat) held.add(holding.seat.station);
      break;
    case 'steady':
      if (holding.at) held.add(holding.at.station);
      if (holding.diameter.size) held.add(holding.diameter.size);
      break;
    case 'vise':
      for (const { station } of holding.ends ?? []) held.add(station);
      break;
  }
  // An arbor or a mandrel goes through a bore of its own diameter.
  for (const { what, shape } of fixtures) {
    if ((what === 'arbor' || what === 'mandrel') && shape.is === 'round' && shape.diameter.size)
      held.add(shape.diameter.size);
  }
  return [...held];
}

type Add = (first: Operation | undefined, next: Operation, why: OrderReason) => void;

function addHoles({ operations, bodies }: RoutePart, add: Add): void {
  const workers = new Map<BodyId, Operation[]>();
  for (const operation of operations) {
    if (holeRank[operation.process] === undefined) continue;
    for (const { record } of bodiesMade(operation, bodies)) {
      const list = workers.get(record.id);
      if (list) list.push(operation);
      else workers.set(record.id, [operation]);
    }
  }
  for (const [body, list] of workers) {
    for (const next of list) {
      for (const first of list) {
        if (holeRank[first.process]! < holeRank[next.process]!) add(first, next, { is: 'hole', body });
      }
    }
  }
}

/** Of operations on the same thing, what leaves more comes first. */
function addStock({ operations, settings }: RoutePart, add: Add): void {
  const left = new Map(
    operations.map(({ id, leaves }) => {
      const read = readPlain(leaves, 'length', settings.lengthUnit);
      return [id, leaves.trim() === '' ? 0 : read.ok ? read.value : undefined] as const;
    }),
  );
  for (const next of operations) {
    const least = left.get(next.id);
    if (least === undefined) continue;
    for (const thing of new Set(next.makes)) {
      for (const first of operations) {
        const more = left.get(first.id);
        if (more !== undefined && more > least && first.makes.includes(thing)) add(first, next, { is: 'stock', thing });
      }
    }
  }
}

/** Whoever is measured from, or held by, a surface comes before whoever cuts it away. */
function addGone(
  of: RoutePart,
  setups: ReadonlyMap<string, Setup>,
  firstMaker: ReadonlyMap<string, Operation>,
  add: Add,
): void {
  const { operations, bodies, stations } = of;
  const answers = answersOf(of);
  const axisOf = (id: StationId) => {
    const station = stations.find((one) => one.id === id);
    const at = answers.at(id);
    return station && station.form !== 'centreline' && at !== undefined ? { axis: station.axis, at } : undefined;
  };
  const cutters = new Map<Surface, readonly BodyId[]>();
  for (const operation of operations) {
    const setup = operation.setup === undefined ? undefined : setups.get(operation.setup);
    for (const surface of new Set([...operation.from, ...(setup ? heldBy(setup) : [])])) {
      if (!cutters.has(surface)) cutters.set(surface, cutterOf(surface, bodies, axisOf));
      for (const body of cutters.get(surface)!) {
        const cutter = firstMaker.get(body);
        if (cutter && !cutter.makes.includes(surface)) add(operation, cutter, { is: 'gone', surface, body });
      }
    }
  }
}

/** Datum first, unless the operation is measured from something else on the same axis, or both are cut in one holding. */
function addDatums({ operations, stations }: RoutePart, firstMaker: ReadonlyMap<string, Operation>, add: Add): void {
  const axisOf = new Map(stations.map((station) => [station.id as string, station]));
  for (const operation of operations) {
    const measured = new Set(operation.from.map((id) => axisOf.get(id)?.axis));
    for (const thing of operation.makes) {
      const station = axisOf.get(thing);
      if (!station || station.datum || measured.has(station.axis)) continue;
      const datum = stations.find((one) => one.datum && one.axis === station.axis);
      const maker = datum && firstMaker.get(datum.id);
      if (
        !maker ||
        operation.makes.includes(datum.id) ||
        (maker.setup !== undefined && maker.setup === operation.setup)
      )
        continue;
      add(maker, operation, { is: 'datum', surface: station.id, datum: datum.id });
    }
  }
}

/** A hole beside which little metal is left is drilled before the body that leaves so little is cut. */
function addThin({ operations, bodies, solid }: RoutePart, add: Add): void {
  const makerOf = (id: BodyId) =>
    operations.find((operation) => bodiesMade(operation, bodies).some(({ record }) => record.id === id));
  for (const { body, beside, metalMm, diameterMm } of solid?.faces.holes ?? []) {
    if (body === beside || metalMm >= THIN_BESIDE_HOLE.value * diameterMm) continue;
    const cutter = bodies.find(({ record }) => record.id === beside);
    if (!cutter || cutter.record.adds || cutter.record.finish !== 'machined') continue;
    const drilled = makerOf(body);
    const thinned = makerOf(beside);
    if (drilled && thinned && drilled.process !== 'bore') add(drilled, thinned, { is: 'thin', body, beside, metalMm });
  }
}
