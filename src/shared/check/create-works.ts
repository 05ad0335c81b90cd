import type { DimensionId, PartId } from '../base/ids.ts';
import { apply, type BuildDiff } from '../build/diff.ts';
import { inListOrder, machinesOf, settingsOf } from '../build/look-up.ts';
import type { Machine } from '../build/machine.ts';
import { materialOf } from '../build/material.ts';
import type { Part } from '../build/part.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import { createDrawing } from '../drawing/create-drawing.ts';
import type { DrawingChange } from '../drawing/drawing.ts';
import { createSetupChecks } from '../machining/setups/create-setup-checks.ts';
import { createSolids } from '../solid/create-solids.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { createPlacing } from '../solid/place-bodies.ts';
import type { PlacedBody } from '../solid/placed.ts';
import type { MeasuredPart } from '../solid/solids.ts';
import type { Material } from '../tables/materials.ts';
import { buildFacts, partFacts } from './facts.ts';
import { type AcceptancesByKey, acceptancesByKey, findingOf, sameFinding } from './finding.ts';
import { gatesOfPart, sameGates, shuttersAmong, shuttersOf, upstreamOf } from './gates.ts';
import { createGathering, type Gathered } from './gather.ts';
import { keepList } from './keep.ts';
import { changeRecords, ownerOf, type PartRecords, recordsByPart } from './part-records.ts';
import { rules } from './registry.ts';
import type { BuildFacts, Finding, GateState, PartFacts } from './rule.ts';
import { type Runs, runRules } from './run.ts';
import { setupFacts, setupInputs } from './setup-facts.ts';
import { beforeOf, touchedParts } from './touched-parts.ts';
import type { Works, WorksChange } from './works.ts';

const partRules = rules.filter((rule) => rule.scope === 'part');
const buildRules = rules.filter((rule) => rule.scope === 'build');

/** What is kept of a part between edits. */
interface PartState {
  readonly facts: PartFacts;
  readonly runs: Runs;
  /** Of the rules of one part only; those of the build stand by themselves. */
  readonly findings: readonly Finding[];
}

/** The gates of a part, with what they were worked out from. */
interface PartGates {
  readonly part: Part;
  readonly planned: boolean;
  readonly concerning: readonly Finding[];
  readonly shutAbove: readonly Finding[];
  readonly states: readonly GateState[];
}

const noFindings: readonly Finding[] = [];
const unchanged: DrawingChange = { dimensions: [], axes: [] };
const noBodies: readonly PlacedBody[] = [];
const noGates: readonly GateState[] = [];

/**
 * The engine over one build. It holds state and is updated in place, but what it hands out is immutable and keeps its
 * identity until an edit really changes it. After any sequence of updates it says exactly what a fresh one would.
 *
 * @param kernelOf the kernel of solids once it is loaded; without one everything but solids is there.
 */
export function createWorks(start: Build, kernelOf: () => Kernel | undefined = () => undefined): Works {
  let build = start;
  const drawing = createDrawing(start);
  const records = recordsByPart(start);
  const states = new Map<PartId, PartState>();
  const gates = new Map<PartId, PartGates>();
  /** What each part hangs on upstream; emptied when any formula names other dimensions than before. */
  const upstream = new Map<PartId, ReadonlySet<DimensionId>>();
  let parts: readonly Part[] = [];
  let materials: readonly Material[] = [];
  let machines: readonly Machine[] = [];
  const placing = createPlacing();
  const setupChecks = createSetupChecks();
  /** The bodies of each part as last placed. */
  const bodies = new Map<PartId, readonly PlacedBody[]>();
  const solids = createSolids(
    { parts: () => parts.map(({ id }) => id), bodiesOf: (part) => bodies.get(part) ?? noBodies },
    kernelOf,
  );
  let accepted: AcceptancesByKey = new Map();
  let whole: { facts: BuildFacts; runs: Runs } | undefined;
  let wholeFindings: readonly Finding[] = noFindings;
  const gathering = createGathering();
  let gathered: Gathered = { all: noFindings, byPart: new Map() };

  const owner = (id: string): PartId | undefined => ownerOf(build.get(id as BuildRecord['id']));

  /** Completes what rules said; a finding that says what it said before is the very one of before. */
  function complete(runs: Runs, part: PartId | undefined, before: readonly Finding[]): readonly Finding[] {
    const known = new Map(before.map((finding) => [finding.key, finding]));
    const findings: Finding[] = [];
    for (const [rule, { said }] of runs) {
      for (const one of said) {
        const finding = findingOf(rule, one, part ?? owner(one.at[0]), accepted);
        const earlier = known.get(finding.key);
        findings.push(earlier && sameFinding(earlier, finding) ? earlier : finding);
      }
    }
    return keepList(before, findings);
  }

  /** Places the bodies of a part. All that changed are placed before facts are re-done: a set-up may hold several parts. */
  function place(id: PartId): void {
    const lists = records.get(id);
    if (!lists) {
      placing.forget(id);
      bodies.delete(id);
      return;
    }
    bodies.set(id, placing.placeBodies(id, { bodies: lists.bodies, get: (record) => build.get(record) }, drawing));
  }

  /** Re-does facts and findings of parts whose bodies are placed. @returns those of which any is another than before. */
  function redoAll(ids: Iterable<PartId>): Set<PartId> {
    const lengthUnit = settingsOf(build).lengthUnit;
    const inputOf = setupInputs({ build, lengthUnit, drawing, solids, records, materials, machines });
    const changed = new Set<PartId>();
    for (const id of ids) if (redo(id, inputOf)) changed.add(id);
    return changed;
  }

  function redo(id: PartId, inputOf: ReturnType<typeof setupInputs>): boolean {
    const lists = records.get(id);
    if (!lists) return states.delete(id);
    const before = states.get(id);
    const facts = partFacts(
      settingsOf(build),
      lists,
      drawing,
      solids,
      materials,
      machines,
      (record) => build.get(record),
      (of, earlier) => setupFacts(of, inputOf, setupChecks, build, earlier),
      before?.facts,
    );
    const runs = runRules(partRules, facts, before?.runs);
    const findings = complete(runs, id, before?.findings ?? noFindings);
    states.set(id, { facts, runs, findings });
    if (!before || findings !== before.findings) return true;
    return (Object.keys(facts) as (keyof PartFacts)[]).some((name) => facts[name] !== before.facts[name]);
  }

  function redoWhole(): void {
    const facts = buildFacts(build, settingsOf(build), parts, machines, drawing, whole?.facts);
    whole = { facts, runs: runRules(buildRules, facts, whole?.runs) };
    wholeFindings = complete(whole.runs, undefined, wholeFindings);
  }

  /** Puts the findings of all parts in their order. @returns whether any is another than before. */
  function gather(): boolean {
    const before = gathered;
    gathered = gathering.gather(parts, (id) => states.get(id)?.findings ?? noFindings, wholeFindings, owner);
    return gathered !== before;
  }

  /** @returns the parts whose gates are other than before. */
  function redoGates(): readonly PartId[] {
    const shutters = shuttersOf(gathered.all);
    const changed: PartId[] = [];
    for (const part of parts) {
      const above = upstream.get(part.id) ?? upstreamOf(records.get(part.id)?.dimensions ?? [], drawing);
      upstream.set(part.id, above);
      const concerning = gathered.byPart.get(part.id) ?? noFindings;
      const before = gates.get(part.id);
      const shutAbove = keepList(before?.shutAbove, above.size === 0 ? noFindings : shuttersAmong(above, shutters));
      const planned = isPlanned(records.get(part.id));
      const same = before?.part === part && before.concerning === concerning && before.shutAbove === shutAbove;
      if (same && before.planned === planned) continue;
      const now = gatesOfPart(part, concerning, shutAbove, planned);
      const stay = sameGates(before?.states, now);
      gates.set(part.id, { part, planned, concerning, shutAbove, states: before && stay ? before.states : now });
      if (!stay) changed.push(part.id);
    }
    return changed;
  }

  const listParts = () => keepList(parts, [...records.values()].map(({ part }) => part).sort(inListOrder));

  function update(diff: BuildDiff): WorksChange {
    const before = beforeOf(diff, build, drawing);
    build = apply(build, diff);
    const change = drawing.update(diff);
    const touched = touchedParts(diff, change, before, build, drawing, (id) => states.get(id)?.facts);
    changeRecords(records, build, diff);
    if (changesOwners(diff)) gathering.forgetOwners();
    const kinds = kindsIn(diff);
    if (kinds.has('part')) parts = listParts();
    if (kinds.has('material')) materials = listMaterials();
    if (kinds.has('machine')) machines = machinesOf(build);
    if (kinds.has('acceptance')) accepted = acceptancesByKey(acceptancesIn(build));
    // A dimension that comes, goes or names others changes what hangs on what; a mere new value does not.
    const listed = [...diff.added, ...diff.removed].some((record) => record.kind === 'dimension');
    const rewired = touched.links || listed;
    if (rewired) upstream.clear();
    const everywhere =
      kinds.has('settings') || kinds.has('acceptance') || kinds.has('material') || kinds.has('machine');
    for (const record of diff.removed) if (record.kind === 'setup') setupChecks.forget(record.id);
    const again = new Set([...touched.parts, ...(everywhere ? states.keys() : [])]);
    for (const id of again) place(id);
    for (const id of holdersOf(again)) again.add(id);
    return settle(change, redoAll(again), rewired || kinds.has('part') || kinds.has('setup') || kinds.has('operation'));
  }

  /** Parts with set-ups that hold one of the given parts as a fellow, or whose remedies were sought in what is another now. */
  function* holdersOf(held: ReadonlySet<PartId>): Generator<PartId> {
    for (const { part, setups } of records.values()) {
      if (setups.some(({ fellows }) => fellows.some((fellow) => held.has(fellow.part)))) yield part.id;
    }
    const resolved = (id: DimensionId) => (build.get(id)?.kind === 'dimension' ? drawing.dimension(id) : undefined);
    for (const { part } of setupChecks.stale((id) => build.get(id), resolved)) yield part;
  }

  /** Re-does what hangs on the solid of a part: itself, and those whose set-ups hold it. */
  function redoSolid(part: PartId): WorksChange {
    if (!records.has(part)) return settle(unchanged, new Set(), false);
    const again = new Set([part]);
    for (const id of holdersOf(again)) again.add(id);
    return settle(unchanged, redoAll(again), false);
  }

  /** Brings findings and gates into step after facts of the `changed` parts were re-done. */
  function settle(change: DrawingChange, changed: Set<PartId>, gatesToo: boolean): WorksChange {
    redoWhole();
    const earlier = gathered.byPart;
    const findingsChanged = gather();
    if (findingsChanged) {
      for (const { id } of parts) if (gathered.byPart.get(id) !== earlier.get(id)) changed.add(id);
    }
    for (const id of gates.keys()) if (!records.has(id)) gates.delete(id);
    // Gates hang on the findings, on what hangs on what, and on how the parts are made.
    if (findingsChanged || gatesToo) for (const id of redoGates()) changed.add(id);
    return { drawing: change, parts: [...changed].sort(), findingsChanged };
  }

  function computeSolid(part: PartId): WorksChange {
    solids.compute(part);
    return redoSolid(part);
  }

  function takeSolid(part: PartId, of: readonly PlacedBody[], measured: MeasuredPart): WorksChange {
    solids.take(part, of, measured);
    return redoSolid(part);
  }

  function computeLive(part: PartId): WorksChange {
    return solids.computeLive(part) ? redoSolid(part) : settle(unchanged, new Set(), false);
  }

  const listMaterials = () =>
    [...build.values()].flatMap((record) => (record.kind === 'material' ? [materialOf(record)] : []));

  parts = listParts();
  materials = listMaterials();
  machines = machinesOf(build);
  accepted = acceptancesByKey(acceptancesIn(build));
  for (const id of records.keys()) place(id);
  redoAll(records.keys());
  redoWhole();
  gather();
  redoGates();

  return {
    get build() {
      return build;
    },
    drawing,
    solids,
    findings: () => gathered.all,
    findingsOf: (part) => gathered.byPart.get(part) ?? noFindings,
    gatesOf: (part) => gates.get(part)?.states ?? noGates,
    factsOf: (part) => states.get(part)?.facts,
    update,
    computeSolid,
    takeSolid,
    computeLive,
  };
}

/** Whether anything is planned to be machined on it. */
const isPlanned = (records: PartRecords | undefined): boolean =>
  records !== undefined && records.setups.length + records.operations.length > 0;

function* acceptancesIn(build: Build) {
  for (const record of build.values()) if (record.kind === 'acceptance') yield record;
}

/** Whether a record came, went or passed to another part. */
const changesOwners = ({ added, removed, updated }: BuildDiff): boolean =>
  added.length + removed.length > 0 || updated.some(([from, to]) => ownerOf(from) !== ownerOf(to));

function kindsIn(diff: BuildDiff): ReadonlySet<BuildRecord['kind']> {
  return new Set([...diff.added, ...diff.removed, ...diff.updated.map(([, to]) => to)].map((record) => record.kind));
}
