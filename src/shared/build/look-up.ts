import { assert } from '../base/assert.ts';
import type { PartId } from '../base/ids.ts';
import { nameKey } from '../formula/name-key.ts';
import type { Acceptance } from './acceptance.ts';
import type { OwnAlloy } from './alloy.ts';
import type { Body } from './body.ts';
import { idsIn } from './body-uses.ts';
import type { Casting } from './casting.ts';
import type { Dimension } from './dimension.ts';
import type { Machine } from './machine.ts';
import type { OwnMaterial } from './material.ts';
import type { Operation } from './operation.ts';
import type { Part } from './part.ts';
import type { Pattern } from './pattern.ts';
import { type Plan, usesOfPlan } from './plan-uses.ts';
import type { Pour } from './pour.ts';
import type { Build, BuildRecord, RecordOf } from './records.ts';
import { SETTINGS_ID, type Settings } from './settings.ts';
import type { Setup } from './setup.ts';
import type { Solid } from './solid.ts';
import type { Axis, Station } from './station.ts';

interface Index {
  readonly materials: readonly OwnMaterial[];
  readonly alloys: readonly OwnAlloy[];
  readonly machines: readonly Machine[];
  readonly parts: readonly Part[];
  readonly stations: ReadonlyMap<PartId, readonly Station[]>;
  readonly dimensions: ReadonlyMap<PartId, readonly Dimension[]>;
  readonly bodies: ReadonlyMap<PartId, readonly Body[]>;
  readonly solids: readonly Solid[];
  readonly setups: ReadonlyMap<PartId, readonly Setup[]>;
  readonly operations: ReadonlyMap<PartId, readonly Operation[]>;
  readonly castings: ReadonlyMap<PartId, Casting>;
  readonly patterns: ReadonlyMap<PartId, readonly Pattern[]>;
  readonly pours: readonly Pour[];
  readonly acceptances: readonly Acceptance[];
}

/** List order: by `order`, ties by id, so that it is the same everywhere. */
export const inListOrder = (
  a: { readonly order: number; readonly id: string },
  b: { readonly order: number; readonly id: string },
): number => a.order - b.order || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

type Named = Pick<OwnMaterial | OwnAlloy, 'name' | 'id'>;
const byName = (a: Named, b: Named): number => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1);

// A build never changes, so its index may be kept as long as the build itself is.
const indexes = new WeakMap<Build, Index>();

function group<R extends Station | Dimension | Body | Setup | Operation | Pattern>(
  records: readonly R[],
): Map<PartId, R[]> {
  const groups = new Map<PartId, R[]>();
  for (const record of records) {
    const list = groups.get(record.part);
    if (list) list.push(record);
    else groups.set(record.part, [record]);
  }
  for (const list of groups.values()) list.sort(inListOrder);
  return groups;
}

function indexOf(build: Build): Index {
  const known = indexes.get(build);
  if (known) return known;
  const materials: OwnMaterial[] = [];
  const alloys: OwnAlloy[] = [];
  const machines: Machine[] = [];
  const parts: Part[] = [];
  const stations: Station[] = [];
  const dimensions: Dimension[] = [];
  const bodies: Body[] = [];
  const solids: Solid[] = [];
  const setups: Setup[] = [];
  const operations: Operation[] = [];
  const castings = new Map<PartId, Casting>();
  const patterns: Pattern[] = [];
  const pours: Pour[] = [];
  const acceptances: Acceptance[] = [];
  for (const record of build.values()) {
    if (record.kind === 'part') parts.push(record);
    else if (record.kind === 'material') materials.push(record);
    else if (record.kind === 'alloy') alloys.push(record);
    else if (record.kind === 'station') stations.push(record);
    else if (record.kind === 'dimension') dimensions.push(record);
    else if (record.kind === 'body') bodies.push(record);
    else if (record.kind === 'solid') solids.push(record);
    else if (record.kind === 'setup') setups.push(record);
    else if (record.kind === 'operation') operations.push(record);
    else if (record.kind === 'machine') machines.push(record);
    else if (record.kind === 'casting') castings.set(record.part, record);
    else if (record.kind === 'pattern') patterns.push(record);
    else if (record.kind === 'pour') pours.push(record);
    else if (record.kind === 'acceptance') acceptances.push(record);
  }
  const index: Index = {
    materials: materials.sort(byName),
    alloys: alloys.sort(byName),
    machines: machines.sort(inListOrder),
    parts: parts.sort(inListOrder),
    stations: group(stations),
    dimensions: group(dimensions),
    bodies: group(bodies),
    solids: solids.sort((a, b) => (a.id < b.id ? -1 : 1)),
    setups: group(setups),
    operations: group(operations),
    castings,
    patterns: group(patterns),
    pours: pours.sort(inListOrder),
    acceptances: acceptances.sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
  indexes.set(build, index);
  return index;
}

/** A build out of its records. Ids are taken to be different from one another (`validateBuild` sees to that). */
export const buildOf = (records: Iterable<BuildRecord>): Build => {
  const build = new Map<BuildRecord['id'], BuildRecord>();
  for (const record of records) build.set(record.id, record);
  return build;
};

/** @returns the record of that id when it is of that kind. */
export function recordOf<K extends BuildRecord['kind']>(build: Build, kind: K, id: string): RecordOf<K> | undefined {
  const record = build.get(id as BuildRecord['id']);
  return record?.kind === kind ? (record as RecordOf<K>) : undefined;
}

export function settingsOf(build: Build): Settings {
  const settings = recordOf(build, 'settings', SETTINGS_ID);
  assert(settings, 'a build has its settings');
  return settings;
}

/** Materials of the build's own, by name. */
export const materialsOf = (build: Build): readonly OwnMaterial[] => indexOf(build).materials;

/** Alloys of the build's own, by name; `alloyOf` makes of each what look-ups take. */
export const alloysOf = (build: Build): readonly OwnAlloy[] => indexOf(build).alloys;

/** Machines of the build in list order. */
export const machinesOf = (build: Build): readonly Machine[] => indexOf(build).machines;

/** Parts in list order. */
export const partsOf = (build: Build): readonly Part[] => indexOf(build).parts;

/** Stations of a part in list order; of one axis when it is given. */
export function stationsOf(build: Build, part: PartId, axis?: Axis): readonly Station[] {
  const all = indexOf(build).stations.get(part) ?? [];
  return axis === undefined ? all : all.filter((station) => station.axis === axis);
}

/** Dimensions of a part in list order. */
export const dimensionsOf = (build: Build, part: PartId): readonly Dimension[] =>
  indexOf(build).dimensions.get(part) ?? [];

/** Bodies of a part in list order: the order in which they add to it and take from it. */
export const bodiesOf = (build: Build, part: PartId): readonly Body[] => indexOf(build).bodies.get(part) ?? [];

/** Meshes that were brought in, by id. */
export const solidsOf = (build: Build): readonly Solid[] => indexOf(build).solids;

/** Set-ups in which a part is the one worked upon, in list order. */
export const setupsOf = (build: Build, part: PartId): readonly Setup[] => indexOf(build).setups.get(part) ?? [];

/** A part's route: its operations in list order. */
export const operationsOf = (build: Build, part: PartId): readonly Operation[] =>
  indexOf(build).operations.get(part) ?? [];

/** How the pattern of a part is made; undefined while nothing was said of it. */
export const castingOf = (build: Build, part: PartId): Casting | undefined => indexOf(build).castings.get(part);

/** Patterns of a part that were made or are in the making, in list order. */
export const patternsOf = (build: Build, part: PartId): readonly Pattern[] => indexOf(build).patterns.get(part) ?? [];

/** All pours of the build in list order. */
export const poursOf = (build: Build): readonly Pour[] => indexOf(build).pours;

const users = new WeakMap<Build, ReadonlyMap<string, readonly Body[]>>();

/** From each station, dimension and solid that bodies hang on directly to those bodies. */
function usersOf(build: Build): ReadonlyMap<string, readonly Body[]> {
  const known = users.get(build);
  if (known) return known;
  const found = new Map<string, Body[]>();
  for (const bodies of indexOf(build).bodies.values()) {
    for (const body of bodies) {
      for (const id of idsIn(body)) {
        const list = found.get(id);
        if (list) list.push(body);
        else found.set(id, [body]);
      }
    }
  }
  users.set(build, found);
  return found;
}

/** Bodies that hang directly on one of the given stations, dimensions or solids: parts by id, bodies in list order. */
export function bodiesNeeding(build: Build, ids: ReadonlySet<string>): readonly Body[] {
  const all = usersOf(build);
  const found = new Set<Body>();
  if (all.size > 0) for (const id of ids) for (const body of all.get(id) ?? []) found.add(body);
  return [...found].sort((a, b) => (a.part === b.part ? inListOrder(a, b) : a.part < b.part ? -1 : 1));
}

function* allPlans({ setups, operations, castings, patterns, pours }: Index): Generator<Plan> {
  for (const lists of [setups, operations, patterns]) for (const list of lists.values()) yield* list;
  yield* castings.values();
  yield* pours;
}

const plansByTarget = new WeakMap<Build, ReadonlyMap<string, readonly Plan[]>>();

/** From each record that plans name to those that name it. */
function plansOf(build: Build): ReadonlyMap<string, readonly Plan[]> {
  const known = plansByTarget.get(build);
  if (known) return known;
  const found = new Map<string, Plan[]>();
  for (const plan of allPlans(indexOf(build))) {
    for (const id of new Set(usesOfPlan(plan).uses.map((use) => use.id))) {
      const there = found.get(id);
      if (there) there.push(plan);
      else found.set(id, [plan]);
    }
  }
  plansByTarget.set(build, found);
  return found;
}

const planKinds: readonly Plan['kind'][] = ['setup', 'operation', 'casting', 'pattern', 'pour'];

function inPlanOrder(a: Plan, b: Plan): number {
  if (a.kind !== b.kind) return planKinds.indexOf(a.kind) - planKinds.indexOf(b.kind);
  const [partA, partB] = [a, b].map((plan) => ('part' in plan ? plan.part : ''));
  if (partA !== partB) return partA! < partB! ? -1 : 1;
  // There is one casting of a part.
  return a.kind === 'casting' || b.kind === 'casting' ? 0 : inListOrder(a, b);
}

/** Set-ups, operations, castings, patterns and pours that name one of the given records: parts by id, each in list order. */
export function plansNaming(build: Build, ids: ReadonlySet<string>): readonly Plan[] {
  const all = plansOf(build);
  const found = new Set<Plan>();
  if (all.size > 0) for (const id of ids) for (const plan of all.get(id) ?? []) found.add(plan);
  return [...found].sort(inPlanOrder);
}

export const acceptancesOf = (build: Build): readonly Acceptance[] => indexOf(build).acceptances;

/** Dimensions that measure from or to one of the given stations. */
export function dimensionsAt(build: Build, stations: ReadonlySet<string>): readonly Dimension[] {
  const found: Dimension[] = [];
  for (const record of build.values()) {
    if (record.kind !== 'dimension' || record.measure.type !== 'between') continue;
    if (stations.has(record.measure.from) || stations.has(record.measure.to)) found.push(record);
  }
  return found.sort(inListOrder);
}

/** Parts of that name, upper and lower case alike. */
export const partsNamed = (build: Build, name: string): readonly Part[] => {
  const folded = nameKey(name);
  return partsOf(build).filter((part) => nameKey(part.name) === folded);
};
