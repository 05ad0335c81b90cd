import type {
  BodyId,
  DimensionId,
  MachineId,
  OperationId,
  PartId,
  PatternId,
  PourId,
  SetupId,
  StationId,
} from '../../shared/base/ids.ts';
import { alloyOf, type OwnAlloy } from '../../shared/build/alloy.ts';
import type { Body } from '../../shared/build/body.ts';
import type { Casting } from '../../shared/build/casting.ts';
import type { BuildDiff } from '../../shared/build/diff.ts';
import type { Dimension } from '../../shared/build/dimension.ts';
import type { Machine } from '../../shared/build/machine.ts';
import { materialOf, type OwnMaterial } from '../../shared/build/material.ts';
import type { Operation } from '../../shared/build/operation.ts';
import type { Part } from '../../shared/build/part.ts';
import type { Pattern } from '../../shared/build/pattern.ts';
import type { Pour } from '../../shared/build/pour.ts';
import type { Build, BuildRecord } from '../../shared/build/records.ts';
import { defaultSettings, SETTINGS_ID, type Settings } from '../../shared/build/settings.ts';
import type { Setup } from '../../shared/build/setup.ts';
import type { Station } from '../../shared/build/station.ts';
import type { Alloy } from '../../shared/tables/alloys.ts';
import type { Material } from '../../shared/tables/materials.ts';

/** The records of a build by part and in list order; lists keep their identity until an edit touches them. */
export interface BuildIndex {
  settings(): Settings;
  parts(): readonly Part[];
  stationsOf(part: PartId): readonly Station[];
  dimensionsOf(part: PartId): readonly Dimension[];
  /** In the order in which they add to the part and take from it. */
  bodiesOf(part: PartId): readonly Body[];
  machines(): readonly Machine[];
  setupsOf(part: PartId): readonly Setup[];
  /** The route of a part, in its order. */
  operationsOf(part: PartId): readonly Operation[];
  /** How the pattern of a part is made; undefined while nothing was said of it. */
  castingOf(part: PartId): Casting | undefined;
  /** Patterns of a part that were made or are in the making. */
  patternsOf(part: PartId): readonly Pattern[];
  /** All pours of the build. */
  pours(): readonly Pour[];
  /** Alloys of the build's own by name, as look-ups take them. */
  alloys(): readonly Alloy[];
  /** Their records. */
  alloyRecords(): readonly OwnAlloy[];
  /** Materials of the build's own, as look-ups take them. */
  materials(): readonly Material[];
  /** Their records. */
  materialRecords(): readonly OwnMaterial[];
  part(id: PartId): Part | undefined;
  station(id: StationId): Station | undefined;
  dimension(id: DimensionId): Dimension | undefined;
  body(id: BodyId): Body | undefined;
  machine(id: MachineId): Machine | undefined;
  setup(id: SetupId): Setup | undefined;
  operation(id: OperationId): Operation | undefined;
  pattern(id: PatternId): Pattern | undefined;
  pour(id: PourId): Pour | undefined;
  /** The part that a record belongs to. */
  partOf(id: string): PartId | undefined;
  update(diff: BuildDiff): void;
}

interface Held {
  readonly stations: Map<string, Station>;
  readonly dimensions: Map<string, Dimension>;
  readonly bodies: Map<string, Body>;
  readonly setups: Map<string, Setup>;
  readonly operations: Map<string, Operation>;
  readonly patterns: Map<string, Pattern>;
  stationList: readonly Station[] | undefined;
  bodyList: readonly Body[] | undefined;
  dimensionList: readonly Dimension[] | undefined;
  setupList: readonly Setup[] | undefined;
  operationList: readonly Operation[] | undefined;
  patternList: readonly Pattern[] | undefined;
  casting: Casting | undefined;
}

type Ordered = { readonly id: string; readonly order: number };
const byOrder = (a: Ordered, b: Ordered) => a.order - b.order || (a.id < b.id ? -1 : 1);
const sorted = <T extends Ordered>(items: Iterable<T>): readonly T[] => [...items].sort(byOrder);

export function createBuildIndex(build: Build): BuildIndex {
  const records = new Map<string, BuildRecord>();
  const parts = new Map<string, Part>();
  const held = new Map<string, Held>();
  const materials = new Map<string, OwnMaterial>();
  const alloys = new Map<string, OwnAlloy>();
  const machines = new Map<string, Machine>();
  const pours = new Map<string, Pour>();
  let partList: readonly Part[] | undefined;
  let machineList: readonly Machine[] | undefined;
  let pourList: readonly Pour[] | undefined;
  let alloyList: readonly Alloy[] | undefined;
  let alloyRecords: readonly OwnAlloy[] | undefined;
  let materialList: readonly Material[] | undefined;
  let materialRecords: readonly OwnMaterial[] | undefined;

  const holdOf = (part: string): Held => {
    let hold = held.get(part);
    if (hold === undefined) {
      hold = {
        stations: new Map(),
        dimensions: new Map(),
        bodies: new Map(),
        setups: new Map(),
        operations: new Map(),
        patterns: new Map(),
        stationList: undefined,
        dimensionList: undefined,
        bodyList: undefined,
        setupList: undefined,
        operationList: undefined,
        patternList: undefined,
        casting: undefined,
      };
      held.set(part, hold);
    }
    return hold;
  };
  const put = (record: BuildRecord, there: boolean) => {
    if (there) records.set(record.id, record);
    else records.delete(record.id);
    if (record.kind === 'part') {
      if (there) parts.set(record.id, record);
      else parts.delete(record.id);
      partList = undefined;
    } else if (record.kind === 'station') {
      const hold = holdOf(record.part);
      if (there) hold.stations.set(record.id, record);
      else hold.stations.delete(record.id);
      hold.stationList = undefined;
    } else if (record.kind === 'dimension') {
      const hold = holdOf(record.part);
      if (there) hold.dimensions.set(record.id, record);
      else hold.dimensions.delete(record.id);
      hold.dimensionList = undefined;
    } else if (record.kind === 'material') {
      if (there) materials.set(record.id, record);
      else materials.delete(record.id);
      materialList = undefined;
      materialRecords = undefined;
    } else if (record.kind === 'body') {
      const hold = holdOf(record.part);
      if (there) hold.bodies.set(record.id, record);
      else hold.bodies.delete(record.id);
      hold.bodyList = undefined;
    } else if (record.kind === 'machine') {
      if (there) machines.set(record.id, record);
      else machines.delete(record.id);
      machineList = undefined;
    } else if (record.kind === 'setup') {
      const hold = holdOf(record.part);
      if (there) hold.setups.set(record.id, record);
      else hold.setups.delete(record.id);
      hold.setupList = undefined;
    } else if (record.kind === 'operation') {
      const hold = holdOf(record.part);
      if (there) hold.operations.set(record.id, record);
      else hold.operations.delete(record.id);
      hold.operationList = undefined;
    } else if (record.kind === 'casting') {
      const hold = holdOf(record.part);
      if (there) hold.casting = record;
      else if (hold.casting?.id === record.id) hold.casting = undefined;
    } else if (record.kind === 'pattern') {
      const hold = holdOf(record.part);
      if (there) hold.patterns.set(record.id, record);
      else hold.patterns.delete(record.id);
      hold.patternList = undefined;
    } else if (record.kind === 'pour') {
      if (there) pours.set(record.id, record);
      else pours.delete(record.id);
      pourList = undefined;
    } else if (record.kind === 'alloy') {
      if (there) alloys.set(record.id, record);
      else alloys.delete(record.id);
      alloyList = undefined;
      alloyRecords = undefined;
    }
  };
  for (const record of build.values()) put(record, true);

  const find = <K extends BuildRecord['kind']>(kind: K, id: string) => {
    const record = records.get(id);
    return record?.kind === kind ? (record as Extract<BuildRecord, { kind: K }>) : undefined;
  };
  const ownAlloys = (): readonly OwnAlloy[] => {
    alloyRecords ??= [...alloys.values()].sort((a, b) =>
      a.name < b.name || (a.name === b.name && a.id < b.id) ? -1 : 1,
    );
    return alloyRecords;
  };
  return {
    settings: () => find('settings', SETTINGS_ID) ?? defaultSettings('Untitled'),
    parts: () => {
      partList ??= sorted(parts.values());
      return partList;
    },
    stationsOf: (part) => {
      const hold = holdOf(part);
      hold.stationList ??= sorted(hold.stations.values());
      return hold.stationList;
    },
    dimensionsOf: (part) => {
      const hold = holdOf(part);
      hold.dimensionList ??= sorted(hold.dimensions.values());
      return hold.dimensionList;
    },
    bodiesOf: (part) => {
      const hold = holdOf(part);
      hold.bodyList ??= sorted(hold.bodies.values());
      return hold.bodyList;
    },
    machines: () => {
      machineList ??= sorted(machines.values());
      return machineList;
    },
    setupsOf: (part) => {
      const hold = holdOf(part);
      hold.setupList ??= sorted(hold.setups.values());
      return hold.setupList;
    },
    operationsOf: (part) => {
      const hold = holdOf(part);
      hold.operationList ??= sorted(hold.operations.values());
      return hold.operationList;
    },
    castingOf: (part) => held.get(part)?.casting,
    patternsOf: (part) => {
      const hold = holdOf(part);
      hold.patternList ??= sorted(hold.patterns.values());
      return hold.patternList;
    },
    pours: () => {
      pourList ??= sorted(pours.values());
      return pourList;
    },
    alloys: () => {
      alloyList ??= ownAlloys().map(alloyOf);
      return alloyList;
    },
    alloyRecords: ownAlloys,
    materials: () => {
      materialList ??= [...materials.values()].map(materialOf);
      return materialList;
    },
    materialRecords: () => {
      materialRecords ??= [...materials.values()];
      return materialRecords;
    },
    part: (id) => find('part', id),
    station: (id) => find('station', id),
    dimension: (id) => find('dimension', id),
    body: (id) => find('body', id),
    machine: (id) => find('machine', id),
    setup: (id) => find('setup', id),
    operation: (id) => find('operation', id),
    pattern: (id) => find('pattern', id),
    pour: (id) => find('pour', id),
    partOf: (id) => {
      const record = records.get(id);
      if (record?.kind === 'part') return record.id;
      return record !== undefined && 'part' in record ? record.part : undefined;
    },
    update: (diff) => {
      for (const record of diff.removed) put(record, false);
      for (const [from] of diff.updated) put(from, false);
      for (const [, to] of diff.updated) put(to, true);
      for (const record of diff.added) put(record, true);
    },
  };
}
