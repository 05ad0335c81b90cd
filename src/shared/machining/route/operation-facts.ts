import type { OperationId } from '../../base/ids.ts';
import type { Machine } from '../../build/machine.ts';
import type { Operation } from '../../build/operation.ts';
import type { Setup } from '../../build/setup.ts';
import { sameContent } from '../../drawing/keep.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { type FoundMetal, findMetal } from '../../tables/cutting-metals.ts';
import { OVERRUN_MM } from '../../tables/cutting-practice.ts';
import { type MaterialRow, materialNamed } from '../../tables/materials.ts';
import { type CutWanted, jobOf, proposeCut } from '../cutting/conditions.ts';
import { deepestCut, type LoadedCut, loadOf } from '../cutting/cut-load.ts';
import { type MachineMeans, meansOf } from './machine-means.ts';
import type { OperationFact, Pass } from './operation-fact.ts';
import { cuttingDiameter, type HoleCut, holeCuts } from './operation-sizes.ts';
import { warningsOf } from './operation-warnings.ts';
import { minutesOf } from './pass-minutes.ts';
import { cutsInPasses, type PassPlan, planPasses } from './passes.ts';
import { type ReadOperation, readOperation } from './read-operation.ts';
import { type Answers, answersOf, type RoutePart } from './route-part.ts';
import { type Stock, stockOf } from './stock.ts';

/**
 * All that follows from each operation of a part, in list order.
 *
 * @param before what was said last; facts that say the same are the very ones of before.
 */
export function operationFacts(of: RoutePart, before: readonly OperationFact[] = []): readonly OperationFact[] {
  const { operations, bodies, settings, machines } = of;
  if (operations.length === 0) return [];
  const answers = answersOf(of);
  const setups = new Map<string, Setup>(of.setups.map((setup) => [setup.id, setup]));
  const reads = new Map<OperationId, ReadOperation>();
  for (const one of operations) reads.set(one.id, readOperation(one, bodies, answers, settings.lengthUnit));
  const stocks = stockOf({ operations, reads, setups, bodies, answers, lengthUnit: settings.lengthUnit });
  const metal = metalOf(of);
  const known = new Map(before.map((fact) => [fact.record.id, fact]));
  return operations.map((operation, i) => {
    const setup = operation.setup === undefined ? undefined : setups.get(operation.setup);
    const machine = setup?.machine && machines.find(({ id }) => id === setup.machine);
    const fact = factOf(of, answers, metal, {
      operation,
      step: i + 1,
      setup,
      machine,
      read: reads.get(operation.id)!,
      stock: stocks.get(operation.id)!,
    });
    const earlier = known.get(operation.id);
    return earlier && sameContent(earlier, fact) ? earlier : fact;
  });
}

/** What the part's material is taken as in the tables of cutting. */
const metalOf = ({ part, material }: Pick<RoutePart, 'part' | 'material'>): FoundMetal | undefined =>
  findMetal(part.material, material?.cuttingGroup, materialNamed<MaterialRow>(part.material)?.cuttingMetal);

interface Given {
  readonly operation: Operation;
  readonly step: number;
  readonly setup: Setup | undefined;
  readonly machine: Machine | undefined;
  readonly read: ReadOperation;
  readonly stock: Stock;
}

function factOf(
  { part, settings }: RoutePart,
  answers: Answers,
  metal: FoundMetal | undefined,
  { operation, step, setup, machine, read, stock }: Given,
): OperationFact {
  const means = meansOf(machine, settings.lengthUnit);
  const diameterMm = cuttingDiameter(operation, read, answers);
  const holes = holeCuts(operation, read);
  const passes = passesOf(operation, metal, means, read, stock, diameterMm, holes);
  const worked = passes.map(({ minutes }) => minutes);
  const minutes =
    read.chosen.minutes ??
    (worked.some((one) => one === undefined) ? undefined : worked.reduce<number>((sum, one) => sum + one!, 0));
  const unknown = unknownOf(operation, part.material, metal, machine, means, read, diameterMm, passes, minutes);
  return {
    record: operation,
    step,
    setup,
    machine,
    metal,
    read,
    stock,
    diameterMm,
    count: Math.max(
      1,
      holes.reduce((sum, { hole }) => sum + hole.copies, 0),
    ),
    passes,
    minutes,
    warnings: warningsOf({ operation, setup, read, means, stock, diameterMm, holes, passes, answers }),
    unknown,
  };
}

function passesOf(
  operation: Operation,
  found: FoundMetal | undefined,
  means: MachineMeans,
  read: ReadOperation,
  stock: Stock,
  diameterMm: number | undefined,
  holes: readonly HoleCut[],
): readonly Pass[] {
  const { process } = operation;
  const { tool, cut, chosen } = read;
  const metal = found?.metal;
  const length = cut?.lengthMm;
  const conditions = (finish: boolean) => {
    const wanted: CutWanted = {
      metal,
      process,
      edge: tool.edge,
      diameterMm,
      finish,
      pitchMm: tool.pitchMm ?? holes[0]?.hole.thread?.pitchMm,
      holeMm: holes[0]?.depthMm ?? length,
      strokeMm: length === undefined ? undefined : length + OVERRUN_MM.value,
      wheelMm: means.wheelWidthMm,
      machine: means.range,
      chosen,
    };
    return proposeCut(wanted);
  };
  const loaded = (depthMm: number | undefined, { speed, rpm, feed }: ReturnType<typeof conditions>) =>
    metal && speed && rpm && feed
      ? ({
          metal,
          process,
          speed: speed.value,
          rpm: rpm.value,
          feed: feed.value,
          depthMm,
          diameterMm,
          fromMm: stock.holeMm,
          breadthMm: cut?.diameterMm,
          teeth: tool.teeth,
          angleDeg: tool.angleDeg,
        } satisfies LoadedCut)
      : undefined;
  const rough = loaded(undefined, conditions(false));
  const takesMm =
    stock.findsMm === undefined || stock.leavesMm === undefined
      ? undefined
      : Math.max(0, stock.findsMm - stock.leavesMm);
  const plans = planPasses({
    process,
    metal,
    takesMm,
    toSize: stock.leavesMm === 0,
    chosenMm: chosen.depth,
    motorMm: rough && means.motorKw !== undefined ? deepestCut(rough, means.motorKw) : undefined,
    cutterMm: process === 'mill' ? diameterMm : undefined,
  });
  const isLast = (plan: PassPlan): boolean => plan.kind === 'finish' || (plan.kind === 'only' && stock.leavesMm === 0);
  return plans.map((plan) => {
    const ways = conditions(isLast(plan));
    const cutting = loaded(plan.depth?.value, ways);
    const pass = { ...plan, ...ways };
    return {
      ...pass,
      load: cutting && loadOf(cutting),
      minutes: minutesOf({ process, metal, read, diameterMm, holes }, pass),
    };
  });
}

/** What would have to be said, or known, for speed, power and time. */
function unknownOf(
  operation: Operation,
  material: string,
  metal: FoundMetal | undefined,
  machine: Machine | undefined,
  means: MachineMeans,
  read: ReadOperation,
  diameterMm: number | undefined,
  passes: readonly Pass[],
  minutes: number | undefined,
): readonly Unknown[] {
  const unknown: Unknown[] = [...read.unknown];
  const { process } = operation;
  const needsMetal = jobOf(process) !== undefined;
  if (needsMetal && metal === undefined) unknown.push({ is: 'material', name: material });
  const field = (name: string) => unknown.push({ is: 'field', field: name });
  const turnsWork = process === 'face' || process === 'turn' || process === 'bore';
  const isFlat = process === 'shape' || process === 'plane' || process === 'grind' || process === 'saw';
  if (needsMetal && !isFlat && diameterMm === undefined) field(turnsWork ? 'cut/diameter' : 'tool/diameter');
  if (process === 'tap' && passes.every(({ feed }) => feed === undefined)) field('tool/pitch');
  if (minutes === undefined) {
    if (!needsMetal && process !== 'grind') field('chosen/minutes');
    else if (read.cut === undefined && read.holes.length === 0) field('cut');
    else if (isFlat || process === 'mill') {
      if (read.cut !== undefined && read.cut.diameterMm === undefined) field('cut/diameter');
    }
    if (cutsInPasses(process) && passes.some(({ count }) => count === undefined)) field('allowance');
  }
  const powered = passes.some(({ load }) => load !== undefined);
  if (machine && powered && means.motorKw === undefined) {
    unknown.push({ is: 'figure', machine: machine.id, key: 'power' });
  }
  return unknown;
}
