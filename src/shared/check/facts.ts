import type { Machine } from '../build/machine.ts';
import type { Operation } from '../build/operation.ts';
import type { Part } from '../build/part.ts';
import type { Build, BuildRecord, RecordId } from '../build/records.ts';
import type { Settings } from '../build/settings.ts';
import type { Setup } from '../build/setup.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { routeFacts } from '../machining/route/route-facts.ts';
import type { RoutePart } from '../machining/route/route-part.ts';
import type { SetupFact } from '../machining/setups/setup-fact.ts';
import type { Solids } from '../solid/solids.ts';
import { type Material, materialNamed } from '../tables/materials.ts';
import { keepList } from './keep.ts';
import type { PartRecords } from './part-records.ts';
import type { BuildFacts, DimensionFact, PartFacts } from './rule.ts';

/** The facts of a part; every entry that holds what it held before is the very one of before. */
export function partFacts(
  settings: Settings,
  records: PartRecords,
  drawing: Drawing,
  solids: Solids,
  materials: readonly Material[],
  machines: readonly Machine[],
  get: (id: RecordId) => BuildRecord | undefined,
  setupsOf: (records: PartRecords, before: readonly SetupFact[] | undefined) => readonly SetupFact[],
  before: PartFacts | undefined,
): PartFacts {
  const known = new Map(before?.dimensions.map((fact) => [fact.record.id, fact]));
  const dimensions = records.dimensions.map((record): DimensionFact => {
    const resolved = drawing.dimension(record.id);
    const fact = known.get(record.id);
    const namedBy = keepList(fact?.namedBy, drawing.namedBy(record.id));
    const same = fact?.record === record && fact.resolved === resolved && fact.namedBy === namedBy;
    return fact && same ? fact : { record, resolved, namedBy };
  });
  const drawn = {
    settings,
    part: records.part,
    material: materialNamed(records.part.material, materials),
    stations: keepList(before?.stations, records.stations),
    dimensions: keepList(before?.dimensions, dimensions),
    axes: keepList(before?.axes, drawing.axesOf(records.part.id)),
    bodies: solids.bodiesOf(records.part.id),
    solid: solids.latestOf(records.part.id),
    refused: solids.refusedOf(records.part.id),
  };
  const setups = setupsFor(records, get);
  const toMake: RoutePart = { ...drawn, operations: records.operations, setups, machines };
  const { operations, route } = routeFacts(toMake, before);
  return { ...drawn, operations, route, setups: setupsOf(records, before?.setups) };
}

/** The set-ups of a part, and those of other parts in which its own operations are done: it is held there as a fellow. */
function setupsFor(
  { setups, operations }: PartRecords,
  get: (id: RecordId) => BuildRecord | undefined,
): readonly Setup[] {
  const own = new Set(setups.map(({ id }) => id));
  const elsewhere = new Set(operations.flatMap(({ setup }: Operation) => (setup && !own.has(setup) ? [setup] : [])));
  if (elsewhere.size === 0) return setups;
  const found = [...elsewhere].map(get).filter((record): record is Setup => record?.kind === 'setup');
  return [...setups, ...found];
}

/** The facts of the build as a whole, entries kept likewise. */
export function buildFacts(
  build: Build,
  settings: Settings,
  parts: readonly Part[],
  machines: readonly Machine[],
  drawing: Drawing,
  before: BuildFacts | undefined,
): BuildFacts {
  const rings = drawing.rings().map((ring, i) => {
    const members = ring.flatMap((id) => {
      const dimension = build.get(id);
      const part = dimension?.kind === 'dimension' ? build.get(dimension.part) : undefined;
      return dimension?.kind === 'dimension' && part?.kind === 'part' ? [{ dimension, part }] : [];
    });
    const earlier = before?.rings[i];
    const same =
      earlier?.length === members.length &&
      earlier.every(({ dimension, part }, j) => dimension === members[j]?.dimension && part === members[j]?.part);
    return earlier && same ? earlier : members;
  });
  return {
    settings,
    parts: keepList(before?.parts, parts),
    machines: keepList(before?.machines, machines),
    rings: keepList(before?.rings, rings),
  };
}
