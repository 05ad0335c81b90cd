import type { BodyId, MachineId, OperationId, SetupId } from '../../src/shared/base/ids.ts';
import type { Body, Shape } from '../../src/shared/build/body.ts';
import type { Dimension, SizeForm } from '../../src/shared/build/dimension.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultOperation, type Operation, type Process } from '../../src/shared/build/operation.ts';
import type { Part } from '../../src/shared/build/part.ts';
import { defaultSetup, type Setup } from '../../src/shared/build/setup.ts';
import type { Axis, Station, StationForm } from '../../src/shared/build/station.ts';
import type { DimensionFact } from '../../src/shared/check/rule.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import type { OperationFact } from '../../src/shared/machining/route/operation-fact.ts';
import { operationFacts } from '../../src/shared/machining/route/operation-facts.ts';
import { checkRoute } from '../../src/shared/machining/route/order-faults.ts';
import type { RoutePart } from '../../src/shared/machining/route/route-part.ts';
import { placeBodies } from '../../src/shared/solid/place-bodies.ts';
import type { PartSolid } from '../../src/shared/solid/solids.ts';
import { materialNamed } from '../../src/shared/tables/materials.ts';
import { between, dimensionId, fact, part, partId, settings, size, station, stationId } from './facts.ts';

export const operationId = (name: string): OperationId => `operation:${name}` as OperationId;
export const setupId = (name: string): SetupId => `setup:${name}` as SetupId;
export const machineId = (name: string): MachineId => `machine:${name}` as MachineId;
export const routeBodyId = (name: string): BodyId => `body:${name}` as BodyId;

/** What a route is tested on: names become ids. */
export interface RouteGiven {
  /** By name: axis, place in mm (0: the datum), form. */
  readonly stations?: Readonly<Record<string, readonly [axis: Axis, at: number | undefined, form?: StationForm]>>;
  /** By name: form and text as written. */
  readonly sizes?: Readonly<Record<string, readonly [form: SizeForm, text: string]>>;
  readonly bodies?: readonly Body[];
  readonly operations?: readonly Operation[];
  readonly setups?: readonly Setup[];
  readonly machines?: readonly Machine[];
  readonly part?: Partial<Part>;
  readonly lengthUnit?: 'mm' | 'in';
  readonly solid?: PartSolid;
}

/** An operation of the part `column`, called after its id. */
export const operation = (name: string, process: Process, over: Partial<Operation> = {}): Operation => ({
  ...defaultOperation(operationId(name), partId('column'), name, process, 1),
  ...over,
});

export const setup = (name: string, over: Partial<Setup> = {}): Setup => ({
  ...defaultSetup(setupId(name), partId('column'), name, 1),
  ...over,
});

export const machine = (name: string, type: Machine['type'], figures: Machine['figures'] = {}): Machine => ({
  ...defaultMachine(machineId(name), name, type, 1),
  figures,
});

/** A body of the part `column`, called after its id. */
export const routeBody = (
  name: string,
  shape: Shape,
  over: Partial<Pick<Body, 'adds' | 'finish' | 'repeats'>> = {},
): Body => ({
  kind: 'body',
  id: routeBodyId(name),
  part: partId('column'),
  name,
  adds: true,
  finish: 'as cast',
  shape,
  repeats: [],
  note: '',
  order: 1,
  ...over,
});

const pair = (a: string, b: string) => [stationId(a), stationId(b)] as const;

/** From one station to another along each axis. */
export const blockOf = (x: [string, string], y: [string, string], z: [string, string]): Shape => ({
  type: 'block',
  x: [...pair(...x)],
  y: [...pair(...y)],
  z: [...pair(...z)],
});

/** Along Z, on the stations `cx` and `cy`. */
export const drilled = (
  from: string,
  to: string,
  diameter: string,
  more: Partial<Extract<Shape, { type: 'hole' }>> = {},
): Shape => ({
  type: 'hole',
  axis: 'Z',
  from: stationId(from),
  to: stationId(to),
  centre: [...pair('cx', 'cy')],
  diameter: dimensionId(diameter),
  ...more,
});

/** A part as the engine would hand it to its route, its bodies placed by the drawing itself. */
export function routePart(
  given: RouteGiven,
): Omit<RoutePart, 'dimensions'> & { readonly dimensions: readonly Pick<DimensionFact, 'record' | 'resolved'>[] } {
  const stations: Station[] = [];
  const dimensions: Dimension[] = [];
  const datums = new Map<Axis, string>();
  for (const [name, [axis, at]] of Object.entries(given.stations ?? {})) if (at === 0) datums.set(axis, name);
  for (const [name, [axis, at, form = 'face']] of Object.entries(given.stations ?? {})) {
    stations.push(station(name, { axis, form, datum: datums.get(axis) === name, order: stations.length + 1 }));
    const datum = datums.get(axis);
    if (at === undefined || at === 0 || datum === undefined) continue;
    dimensions.push(fact(`to ${name}`, at, { measure: between(datum, name) }).record);
  }
  for (const [name, [form, text]] of Object.entries(given.sizes ?? {})) {
    dimensions.push(fact(name, undefined, { text, measure: size(form) }).record);
  }
  const own = part('column', { material: 'mild steel', ...given.part });
  const records = [settings(), own, ...stations, ...dimensions, ...(given.bodies ?? [])];
  const build = buildOf(records);
  const drawing = createDrawing(build);
  return {
    settings: { lengthUnit: given.lengthUnit ?? 'mm' },
    part: own,
    material: materialNamed(own.material),
    stations,
    dimensions: dimensions.map((record) => ({ record, resolved: drawing.dimension(record.id) })),
    axes: drawing.axesOf(own.id),
    bodies: placeBodies(own.id, { bodies: given.bodies ?? [], get: (id) => build.get(id) }, drawing),
    solid: given.solid,
    operations: given.operations ?? [],
    setups: given.setups ?? [],
    machines: given.machines ?? [],
  };
}

/** The facts of the operations of a part, by name. */
export function routeFacts(given: RouteGiven): ReadonlyMap<string, OperationFact> {
  return new Map(operationFacts(routePart(given)).map((one) => [one.record.name, one]));
}

/** What the rules of a route see of a part. */
export function routeRuleFacts(given: RouteGiven) {
  const of = routePart(given);
  return {
    settings: settings({ lengthUnit: of.settings.lengthUnit }),
    part: of.part,
    stations: of.stations,
    dimensions: of.dimensions.map((one): DimensionFact => ({ ...one, namedBy: [] })),
    bodies: of.bodies,
    operations: operationFacts(of),
    route: checkRoute(of),
  };
}

/** A casting of 100 by 60 by 40 with holes down its middle, as the rules of a route are tried on. */
export const routeCasting = {
  stations: {
    left: ['X', 0],
    right: ['X', 100],
    lug: ['X', 120],
    front: ['Y', 0],
    back: ['Y', 60],
    foot: ['Z', 0],
    floor: ['Z', 10],
    top: ['Z', 40],
    cx: ['X', 50, 'centreline'],
    cy: ['Y', 30, 'centreline'],
  },
  sizes: {
    bore: ['diameter', '25'],
    odd: ['diameter', '10.37'],
    boss: ['diameter', '40'],
    tapped: ['thread', 'M8'],
    narrow: ['diameter', '3'],
  },
  bodies: [
    routeBody('box', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'top'])),
    routeBody('bored', drilled('top', 'foot', 'bore'), { adds: false, finish: 'machined' }),
    routeBody('threaded', drilled('top', 'foot', 'tapped'), { adds: false, finish: 'machined' }),
  ],
} as const satisfies RouteGiven;
