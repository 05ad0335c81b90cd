import type { DimensionId, PartId } from '../base/ids.ts';
import { apply, type BuildDiff } from '../build/diff.ts';
import { inListOrder, settingsOf } from '../build/look-up.ts';
import type { Part } from '../build/part.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import { createDrawing } from '../drawing/create-drawing.ts';
import type { DrawingChange } from '../drawing/drawing.ts';
import { createSolids } from '../solid/create-solids.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { createPlacing } from '../solid/place-bodies.ts';
import type { PlacedBody } from '../solid/placed.ts';
import { buildFacts, partFacts } from './facts.ts';
import { type AcceptancesByKey, acceptancesByKey, findingOf, sameFinding } from './finding.ts';
import { gatesOfPart, sameGates, shuttersOf, upstreamOf } from './gates.ts';
import { keepList } from './keep.ts';
import { changeRecords, ownerOf, recordsByPart } from './part-records.ts';
import { rules } from './registry.ts';
import type { BuildFacts, Finding, GateState, PartFacts, Severity } from './rule.ts';
import { type Runs, runRules } from './run.ts';
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

const noFindings: readonly Finding[] = [];
const unchanged: DrawingChange = { dimensions: [], axes: [] };
const noBodies: readonly PlacedBody[] = [];
const bySeverity: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

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
  const gates = new Map<PartId, readonly GateState[]>();
  /** What each part hangs on upstream; emptied when any formula names other dimensions than before. */
  const upstream = new Map<PartId, ReadonlySet<DimensionId>>();
  let parts: readonly Part[] = [];
  const placing = createPlacing();
  /** The bodies of each part as last placed. */
  const bodies = new Map<PartId, readonly PlacedBody[]>();
  const solids = createSolids(
    { parts: () => parts.map(({ id }) => id), bodiesOf: (part) => bodies.get(part) ?? noBodies },
    kernelOf,
  );
  let accepted: AcceptancesByKey = new Map();
  let whole: { facts: BuildFacts; runs: Runs } | undefined;
  let wholeFindings: readonly Finding[] = noFindings;
  let all: readonly Finding[] = noFindings;
  let byPart: ReadonlyMap<PartId, readonly Finding[]> = new Map();

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

  /** Re-does facts and findings of one part. @returns whether any of them is another than before. */
  function redo(id: PartId): boolean {
    const lists = records.get(id);
    if (!lists) {
      placing.forget(id);
      bodies.delete(id);
      return states.delete(id);
    }
    const before = states.get(id);
    const placed = placing.placeBodies(id, { bodies: lists.bodies, get: (record) => build.get(record) }, drawing);
    bodies.set(id, placed);
    const facts = partFacts(settingsOf(build), lists, drawing, solids, before?.facts);
    const runs = runRules(partRules, facts, before?.runs);
    const findings = complete(runs, id, before?.findings ?? noFindings);
    states.set(id, { facts, runs, findings });
    if (!before || findings !== before.findings) return true;
    return (Object.keys(facts) as (keyof PartFacts)[]).some((name) => facts[name] !== before.facts[name]);
  }

  function redoWhole(): void {
    const facts = buildFacts(build, settingsOf(build), parts, drawing, whole?.facts);
    whole = { facts, runs: runRules(buildRules, facts, whole?.runs) };
    wholeFindings = complete(whole.runs, undefined, wholeFindings);
  }

  /** Puts the findings of all parts in their order. @returns whether any is another than before. */
  function gather(): boolean {
    const place = new Map(parts.map((part, i) => [part.id, i]));
    const placeOf = (finding: Finding): number => (finding.part && place.get(finding.part)) ?? -1;
    const list = [...wholeFindings, ...parts.flatMap(({ id }) => states.get(id)?.findings ?? noFindings)];
    list.sort(
      (a, b) =>
        bySeverity[a.severity] - bySeverity[b.severity] ||
        placeOf(a) - placeOf(b) ||
        (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
    );
    const before = all;
    all = keepList(all, list);
    if (all === before) return false;
    const grouped = new Map<PartId, Finding[]>();
    for (const finding of all) {
      const concerned = new Set([finding.part, ...finding.at.map(owner)]);
      for (const part of concerned) {
        if (!part) continue;
        const group = grouped.get(part);
        if (group) group.push(finding);
        else grouped.set(part, [finding]);
      }
    }
    const earlier = byPart;
    byPart = new Map([...grouped].map(([part, group]) => [part, keepList(earlier.get(part), group)]));
    return true;
  }

  /** @returns the parts whose gates are other than before. */
  function redoGates(): readonly PartId[] {
    const shutters = shuttersOf(all, owner);
    const changed: PartId[] = [];
    for (const part of parts) {
      const own = records.get(part.id)?.dimensions ?? [];
      const above =
        upstream.get(part.id) ??
        upstreamOf(
          own.map(({ id }) => id),
          drawing,
        );
      upstream.set(part.id, above);
      const now = gatesOfPart(part, above, shutters);
      if (sameGates(gates.get(part.id), now)) continue;
      gates.set(part.id, now);
      changed.push(part.id);
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
    const kinds = kindsIn(diff);
    if (kinds.has('part')) parts = listParts();
    if (kinds.has('acceptance')) accepted = acceptancesByKey(acceptancesIn(build));
    // A dimension that comes, goes or names others changes what hangs on what; a mere new value does not.
    const listed = [...diff.added, ...diff.removed].some((record) => record.kind === 'dimension');
    const rewired = touched.links || listed;
    if (rewired) upstream.clear();
    const everywhere = kinds.has('settings') || kinds.has('acceptance');
    const changed = new Set<PartId>();
    for (const id of new Set([...touched.parts, ...(everywhere ? states.keys() : [])])) if (redo(id)) changed.add(id);
    return settle(change, changed, rewired || kinds.has('part'));
  }

  /** Brings findings and gates into step after facts of the `changed` parts were re-done. */
  function settle(change: DrawingChange, changed: Set<PartId>, gatesToo: boolean): WorksChange {
    redoWhole();
    const earlier = byPart;
    const findingsChanged = gather();
    for (const { id } of parts) if (byPart.get(id) !== earlier.get(id)) changed.add(id);
    for (const id of gates.keys()) if (!records.has(id)) gates.delete(id);
    // Gates hang on the findings, on what hangs on what, and on how the parts are made.
    if (findingsChanged || gatesToo) for (const id of redoGates()) changed.add(id);
    return { drawing: change, parts: [...changed].sort(), findingsChanged };
  }

  function computeSolid(part: PartId): WorksChange {
    const changed = new Set<PartId>();
    solids.compute(part);
    if (records.has(part) && redo(part)) changed.add(part);
    return settle(unchanged, changed, false);
  }

  parts = listParts();
  accepted = acceptancesByKey(acceptancesIn(build));
  for (const id of records.keys()) redo(id);
  redoWhole();
  gather();
  redoGates();

  return {
    get build() {
      return build;
    },
    drawing,
    solids,
    findings: () => all,
    findingsOf: (part) => byPart.get(part) ?? noFindings,
    gatesOf: (part) => gates.get(part) ?? [],
    update,
    computeSolid,
  };
}

function* acceptancesIn(build: Build) {
  for (const record of build.values()) if (record.kind === 'acceptance') yield record;
}

function kindsIn(diff: BuildDiff): ReadonlySet<BuildRecord['kind']> {
  return new Set([...diff.added, ...diff.removed, ...diff.updated.map(([, to]) => to)].map((record) => record.kind));
}
