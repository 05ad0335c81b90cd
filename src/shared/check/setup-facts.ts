import type { PartId } from '../base/ids.ts';
import type { Machine } from '../build/machine.ts';
import type { Build } from '../build/records.ts';
import type { Setup } from '../build/setup.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { SetupChecks } from '../machining/setups/create-setup-checks.ts';
import { type SetupFact, setupFact } from '../machining/setups/setup-fact.ts';
import type { KeptInput, PartInput } from '../machining/setups/setup-input.ts';
import { type Numbers, numbersOf } from '../plan/numbers.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { Solids } from '../solid/solids.ts';
import { type Material, materialNamed } from '../tables/materials.ts';
import { keepList } from './keep.ts';
import type { PartRecords } from './part-records.ts';

/** What the works hold that set-ups are worked out from, as it is now. */
export interface SetupSurroundings {
  readonly build: Build;
  readonly lengthUnit: LengthUnit;
  readonly drawing: Drawing;
  readonly solids: Solids;
  readonly records: ReadonlyMap<PartId, PartRecords>;
  readonly materials: readonly Material[];
  readonly machines: readonly Machine[];
}

/** Makes what set-ups ask for of one state of the build: for all of its set-ups together. */
export function setupInputs(around: SetupSurroundings): (setup: Setup) => KeptInput {
  const { build, drawing, solids, records, materials, machines, lengthUnit } = around;
  const numbers: Numbers = numbersOf(drawing, (id) => build.get(id));
  const parts = new Map<PartId, PartInput | undefined>();
  const named = (name: string) => materialNamed(name, materials);
  const partOf = (id: PartId): PartInput | undefined => {
    if (parts.has(id)) return parts.get(id);
    const lists = records.get(id);
    const input: PartInput | undefined = lists && {
      part: lists.part,
      bodies: solids.bodiesOf(id),
      operations: lists.operations,
      figures: solids.figuresOf(id),
      material: named(lists.part.material),
    };
    parts.set(id, input);
    return input;
  };
  const behindOf = (id: PartId): readonly unknown[] => {
    const lists = records.get(id);
    if (!lists) return [];
    const { stations, dimensions, operations } = lists;
    const resolved = dimensions.map((dimension) => drawing.dimension(dimension.id));
    return [...drawing.axesOf(id), ...stations, ...dimensions, ...resolved, ...operations];
  };
  return (setup) => ({ setup, numbers, lengthUnit, machines, partOf, behindOf, materialNamed: named });
}

/** What is said of the set-ups of a part, in list order. */
export function setupFacts(
  { setups, operations }: PartRecords,
  inputOf: (setup: Setup) => KeptInput,
  checks: SetupChecks,
  build: Build,
  before: readonly SetupFact[] | undefined,
): readonly SetupFact[] {
  if (setups.length === 0) return keepList(before, []);
  const known = new Map(before?.map((fact) => [fact.check.setup.id, fact]));
  const facts = setups.map((setup) => {
    const done = operations.flatMap((operation) => (operation.setup === setup.id ? [operation.id] : []));
    const input = inputOf(setup);
    return setupFact(checks.check(input), done, input.lengthUnit, (id) => build.get(id), known.get(setup.id));
  });
  return keepList(before, facts);
}
