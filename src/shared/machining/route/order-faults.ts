import type { BodyId, OperationId, SetupId } from '../../base/ids.ts';
import type { Operation, Process } from '../../build/operation.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { bodiesMade } from './made-holes.ts';
import { type OrderConstraint, orderConstraints } from './order-constraints.ts';
import { findRing } from './propose-order.ts';
import type { RoutePart } from './route-part.ts';
import { isThereAsCast, type Surface } from './surfaces.ts';

/** What is wrong with the order of a route as it stands. */
export type OrderFault =
  /** The first operation of the pair stands behind the other. */
  | { readonly is: 'order'; readonly constraint: OrderConstraint }
  /** No order can have all of these: each has to come before the next, and the last before the first. */
  | { readonly is: 'ring'; readonly constraints: readonly OrderConstraint[] }
  /** A set-up begins from the state after an operation that is done in it. */
  | { readonly is: 'own-state'; readonly setup: SetupId; readonly operation: OperationId }
  /** Both make the same thing, and the first leaves nothing for the second. */
  | {
      readonly is: 'made-twice';
      readonly thing: Operation['makes'][number];
      readonly first: OperationId;
      readonly next: OperationId;
    }
  /** A tool that follows a hole finds none: nothing drills it, and it is not cored. */
  | { readonly is: 'no-hole'; readonly operation: OperationId; readonly body: BodyId }
  /** A cast surface that nothing makes true is measured from in more than one set-up. */
  | { readonly is: 'rough-twice'; readonly surface: Surface; readonly operations: readonly OperationId[] };

/** What is said of the route of a part as a whole. */
export interface RouteCheck {
  readonly constraints: readonly OrderConstraint[];
  readonly faults: readonly OrderFault[];
  /** Machined bodies that no operation makes, in list order; empty while there is no operation at all. */
  readonly unmade: readonly BodyId[];
}

export function checkRoute(of: RoutePart): RouteCheck {
  if (of.operations.length === 0) return { constraints: [], faults: [], unmade: [] };
  const constraints = orderConstraints(of);
  const place = new Map(of.operations.map(({ id }, i) => [id, i]));
  const ring = findRing(
    of.operations.map(({ id }) => id),
    constraints.filter(({ soft }) => !soft),
  );
  const faults: OrderFault[] = constraints
    .filter(({ first, next }) => place.get(first)! > place.get(next)!)
    .map((constraint) => ({ is: 'order', constraint }));
  if (ring) faults.push({ is: 'ring', constraints: ring });
  faults.push(...ownStates(of), ...madeTwice(of), ...withoutHole(of), ...roughTwice(of));
  return { constraints, faults, unmade: unmade(of) };
}

function unmade({ operations, bodies }: RoutePart): readonly BodyId[] {
  const made = new Set(operations.flatMap((one) => bodiesMade(one, bodies).map(({ record }) => record.id)));
  const surfaces = new Set<string>(operations.flatMap(({ makes }) => makes));
  return bodies
    .filter(({ record }) => record.finish === 'machined' && !record.adds)
    .filter(({ record, dimensions }) => !made.has(record.id) && !dimensions.some((id) => surfaces.has(id)))
    .map(({ record }) => record.id);
}

function ownStates({ operations, setups }: RoutePart): readonly OrderFault[] {
  return setups.flatMap((setup): readonly OrderFault[] => {
    const { state } = setup;
    if (state.is !== 'after') return [];
    const isOwn = operations.some(({ id, setup: own }) => id === state.operation && own === setup.id);
    return isOwn ? [{ is: 'own-state', setup: setup.id, operation: state.operation }] : [];
  });
}

/** Takes hundredths off a surface that is to size for everyone else. */
const touches: ReadonlySet<Process> = new Set(['scrape', 'lap', 'file']);
/** Each works on the same hole in a way of its own. */
const worksHoles: ReadonlySet<Process> = new Set(['drill', 'bore', 'ream', 'tap', 'countersink', 'counterbore']);

function madeTwice({ operations }: RoutePart): readonly OrderFault[] {
  const faults: OrderFault[] = [];
  const last = new Map<string, Operation>();
  for (const next of operations) {
    for (const thing of next.makes) {
      const first = last.get(thing);
      last.set(thing, next);
      if (first?.leaves.trim() !== '' || touches.has(next.process)) continue;
      const isOtherWork =
        first.process !== next.process && worksHoles.has(first.process) && worksHoles.has(next.process);
      if (!isOtherWork) faults.push({ is: 'made-twice', thing, first: first.id, next: next.id });
    }
  }
  return faults;
}

const needsHole: ReadonlySet<Process> = new Set(['bore', 'ream', 'tap', 'countersink', 'counterbore']);
const opensSolid: ReadonlySet<Process> = new Set(['drill', 'bore']);

function withoutHole({ operations, bodies }: RoutePart): readonly OrderFault[] {
  const opened = new Set<BodyId>();
  for (const operation of operations) {
    if (!opensSolid.has(operation.process)) continue;
    for (const { record } of bodiesMade(operation, bodies)) {
      if (operation.process === 'drill') opened.add(record.id);
    }
  }
  const isOpen = (body: PlacedBody): boolean =>
    opened.has(body.record.id) ||
    body.record.finish === 'cored' ||
    bodies.some(
      (other) =>
        other !== body &&
        isCoaxial(other, body) &&
        (opened.has(other.record.id) || (!other.record.adds && other.record.finish !== 'machined') || hasBore(other)),
    );
  return operations
    .filter(({ process }) => needsHole.has(process))
    .flatMap((operation) =>
      bodiesMade(operation, bodies)
        .filter((body) => (body.record.shape.type === 'hole' || body.record.shape.type === 'cylinder') && !isOpen(body))
        .filter((body) => operation.process === 'bore' || !isBored(body, operations, bodies))
        .map((body): OrderFault => ({ is: 'no-hole', operation: operation.id, body: body.record.id })),
    );
}

/** A hole that is bored counts as opened for what follows: that it is bored out of the solid is said of the boring. */
const isBored = (body: PlacedBody, operations: readonly Operation[], bodies: readonly PlacedBody[]): boolean =>
  operations.some((one) => one.process === 'bore' && bodiesMade(one, bodies).includes(body));

const hasBore = ({ record: { shape, adds } }: PlacedBody): boolean =>
  adds && shape.type === 'cylinder' && shape.bore !== undefined;

function isCoaxial({ record: { shape: a } }: PlacedBody, { record: { shape: b } }: PlacedBody): boolean {
  if (!('centre' in a) || !('centre' in b)) return false;
  return a.axis === b.axis && a.centre[0] === b.centre[0] && a.centre[1] === b.centre[1];
}

/** Common practice: a rough datum is used once. */
function roughTwice({ operations, bodies }: RoutePart): readonly OrderFault[] {
  const made = new Set<string>(operations.flatMap(({ makes }) => makes));
  const users = new Map<Surface, Operation[]>();
  for (const operation of operations) {
    for (const surface of operation.from) {
      if (made.has(surface) || !isThereAsCast(surface, bodies)) continue;
      const list = users.get(surface);
      if (list) list.push(operation);
      else users.set(surface, [operation]);
    }
  }
  return [...users].flatMap(([surface, list]): readonly OrderFault[] => {
    const firstOfSetups = list.filter(
      ({ setup }, i) => setup === undefined || list.findIndex((other) => other.setup === setup) === i,
    );
    return firstOfSetups.length < 2
      ? []
      : [{ is: 'rough-twice', surface, operations: firstOfSetups.map(({ id }) => id) }];
  });
}
