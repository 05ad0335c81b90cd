import type { PartId } from '../../../shared/base/ids.ts';
import type { PartFacts } from '../../../shared/check/rule.ts';
import { meansOf } from '../../../shared/machining/route/machine-means.ts';
import type { OperationFact } from '../../../shared/machining/route/operation-fact.ts';
import { type Holding, routeTimes } from '../../../shared/machining/route/route-times.ts';
import { sizeOptions, stationOptions } from '../machining/name-options.ts';
import { cellsOf, timeWords } from '../machining/operation-words.ts';
import { nameOfId } from '../machining/reason-words.ts';
import type { OperationRow, RouteModel, RouteTotal } from '../machining/route-models.ts';
import { holdingWords } from '../machining/setup-words.ts';
import { problemsOf, unknownRow } from '../machining/unknown-words.ts';
import { defineView, type Scene } from '../view.ts';
import { type FindingLine, lineOfFinding } from './findings.ts';

/** The route of a part: its operations with all that follows from them. Undefined when the part is not there any more. */
export const routeView = defineView<{ readonly part: PartId }, RouteModel | undefined>({
  open: () => {
    let last: { readonly from: readonly unknown[]; readonly model: RouteModel } | undefined;
    return (scene, { part }) => {
      const facts = scene.works.factsOf(part);
      if (facts === undefined) return undefined;
      const findings = scene.works.findingsOf(part);
      const from = [...Object.values(facts), findings, scene.index.machines(), scene.index.setupsOf(part)];
      if (last?.from.every((value, i) => value === from[i])) return last.model;
      last = { from, model: modelOf(scene, part, facts) };
      return last.model;
    };
  },
});

function modelOf(scene: Scene, part: PartId, facts: PartFacts): RouteModel {
  const { operations, route } = facts;
  const unit = facts.settings.lengthUnit;
  const times = routeTimes(operations, facts.part.quantity);
  const begins = new Map(times.holdings.map((holding) => [holding.operations[0], holding]));
  const said = findingsByRecord(scene, part);
  return {
    part,
    name: facts.part.name,
    unit,
    rows: operations.map((fact) => rowOf(scene, part, fact, begins.get(fact.record.id), said)),
    totals: operations.length === 0 ? [] : totalsOf(scene, times, facts.part.quantity),
    unmade: route.unmade.map((id) => ({ id, name: nameOfId(scene, id) })),
    stations: stationOptions(scene, part),
    sizes: sizeOptions(scene, part),
    bodies: facts.bodies.map(({ record }) => ({
      id: record.id,
      name: record.name,
      aside: record.finish,
      axis: undefined,
    })),
    setups: scene.index.setupsOf(part).map(({ id, name }) => ({ id, name })),
  };
}

function rowOf(
  scene: Scene,
  part: PartId,
  fact: OperationFact,
  holding: Holding | undefined,
  said: ReadonlyMap<string, readonly FindingLine[]>,
): OperationRow {
  const { record, setup, machine, step } = fact;
  const unit = scene.index.settings().lengthUnit;
  return {
    record,
    step,
    setup: setup && { id: setup.id, name: setup.name, machine: machine?.name },
    begins: holding && {
      words:
        holding.setup === undefined
          ? 'At the bench'
          : `${holding.setup.name}: ${holdingWords[holding.setup.holding.as]}${machine === undefined ? '' : `, ${machine.name}`}`,
      minutes: holding.setup === undefined ? '' : `${timeWords(holding.setupMinutes)} to set up`,
    },
    makes: record.makes.map((id) => nameOfId(scene, id)).join(', '),
    ...cellsOf(fact, meansOf(machine, unit).motorKw, unit),
    problems: problemsOf(fact.unknown),
    unknown: fact.unknown.filter(({ is }) => is !== 'written').map((one) => unknownRow(scene, part, one)),
    findings: said.get(record.id) ?? [],
  };
}

/** Open findings by each record that they point at. */
function findingsByRecord(scene: Scene, part: PartId): ReadonlyMap<string, readonly FindingLine[]> {
  const found = new Map<string, FindingLine[]>();
  for (const finding of scene.works.findingsOf(part)) {
    if (finding.accepted !== undefined || !finding.at.some((id) => id.startsWith('operation:'))) continue;
    const line = lineOfFinding(scene, finding);
    for (const id of finding.at) {
      const list = found.get(id) ?? [];
      list.push(line);
      found.set(id, list);
    }
  }
  return found;
}

function totalsOf(scene: Scene, times: ReturnType<typeof routeTimes>, quantity: number): readonly RouteTotal[] {
  const { without } = times;
  const held = times.holdings.filter(({ setup }) => setup !== undefined).length;
  const note =
    without.length === 0
      ? undefined
      : `at least: nothing is known of ${without.map((id) => nameOfId(scene, id)).join(', ')}`;
  const totals: RouteTotal[] = [
    {
      name: 'Operations',
      value: String(times.holdings.reduce((sum, { operations }) => sum + operations.length, 0)),
      note: undefined,
    },
    { name: 'Taken up', value: held === 1 ? 'once' : held === 2 ? 'twice' : `${held} times`, note: undefined },
    { name: 'Setting up', value: timeWords(times.setupMinutes), note: undefined },
    { name: 'Cutting', value: times.minutes === 0 ? 'not known' : timeWords(times.minutes), note },
    { name: 'One part', value: timeWords(times.perPart), note },
  ];
  if (quantity > 1) totals.push({ name: `All ${quantity}`, value: timeWords(times.perLot), note });
  return totals;
}
