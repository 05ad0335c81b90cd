import { sameContent } from '../../drawing/keep.ts';
import type { OperationFact } from './operation-fact.ts';
import { operationFacts } from './operation-facts.ts';
import { checkRoute, type RouteCheck } from './order-faults.ts';
import type { RoutePart } from './route-part.ts';

/** All that is said of how a part is machined. Each entry keeps its identity while it says the same. */
export interface RouteFacts {
  readonly operations: readonly OperationFact[];
  readonly route: RouteCheck;
}

/** What facts were worked out from: a list of its members, so that a list made anew of the same ones is the same. */
const behind = new WeakMap<RouteCheck, readonly unknown[]>();

const inputsOf = ({ settings, part, material, solid, ...lists }: RoutePart): readonly unknown[] => [
  settings.lengthUnit,
  part,
  material,
  solid,
  lists.stations,
  lists.dimensions,
  lists.axes,
  lists.bodies,
  lists.machines,
  lists.operations.length,
  ...lists.operations,
  ...lists.setups,
];

/** @param before what was said last of the same part. */
export function routeFacts(of: RoutePart, before: RouteFacts | undefined): RouteFacts {
  const inputs = inputsOf(of);
  const earlier = before && behind.get(before.route);
  if (before && earlier?.length === inputs.length && inputs.every((one, i) => one === earlier[i])) return before;
  const fresh = operationFacts(of, before?.operations);
  const isSame = fresh.length === before?.operations.length && fresh.every((fact, i) => fact === before.operations[i]);
  const checked = checkRoute(of);
  const route = before && sameContent(before.route, checked) ? before.route : checked;
  behind.set(route, inputs);
  return { operations: before && isSame ? before.operations : fresh, route };
}
