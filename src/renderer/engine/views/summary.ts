import type { PartId } from '../../../shared/base/ids.ts';
import type { BuildDiff } from '../../../shared/build/diff.ts';
import type { Make } from '../../../shared/build/part.ts';
import type { Settings } from '../../../shared/build/settings.ts';
import type { Finding, Gate, GateState } from '../../../shared/check/rule.ts';
import { defineView, type Scene } from '../view.ts';

/** A part as the list of parts shows it. */
export interface PartLine {
  readonly id: PartId;
  readonly name: string;
  readonly number: string;
  readonly make: Make;
  readonly material: string;
  readonly quantity: number;
  readonly gates: readonly { readonly gate: Gate; readonly state: GateState['state']; readonly reasons: number }[];
  readonly counts: Counts;
  readonly stations: number;
  readonly dimensions: number;
}

/** Open findings by severity; `accepted` are those that the builder took on. */
export interface Counts {
  readonly stop: number;
  readonly caution: number;
  readonly note: number;
  readonly accepted: number;
}

export interface Summary {
  readonly settings: Settings;
  readonly parts: readonly PartLine[];
  readonly counts: Counts;
  readonly stations: number;
  readonly dimensions: number;
}

function countFindings(findings: readonly Finding[]): Counts {
  const counts = { stop: 0, caution: 0, note: 0, accepted: 0 };
  for (const finding of findings) counts[finding.accepted === undefined ? finding.severity : 'accepted']++;
  return counts;
}

/** The whole build in short: its settings, its parts with gates and counts. */
export const summaryView = defineView<null, Summary>({
  open: () => {
    let lines = new Map<string, PartLine>();
    let counted: { readonly findings: readonly Finding[]; readonly counts: Counts } | undefined;
    return (scene, _params, change) => {
      const stale = change === undefined ? undefined : staleParts(scene, change);
      const next = new Map<string, PartLine>();
      let stations = 0;
      let dimensions = 0;
      const parts = scene.index.parts().map((part) => {
        const known = lines.get(part.id);
        const line = known !== undefined && stale !== undefined && !stale.has(part.id) ? known : lineOf(scene, part.id);
        next.set(part.id, line);
        stations += line.stations;
        dimensions += line.dimensions;
        return line;
      });
      lines = next;
      const findings = scene.works.findings();
      if (counted?.findings !== findings) counted = { findings, counts: countFindings(findings) };
      return { settings: scene.index.settings(), parts, counts: counted.counts, stations, dimensions };
    };
  },
});

function staleParts(
  scene: Scene,
  change: { readonly parts: readonly PartId[]; readonly diff: BuildDiff },
): Set<string> {
  const stale = new Set<string>(change.parts);
  const { added, updated, removed } = change.diff;
  for (const record of [...added, ...removed, ...updated.map(([, to]) => to)]) {
    const part = record.kind === 'part' ? record.id : 'part' in record ? record.part : undefined;
    if (part !== undefined) stale.add(part);
    // An acceptance points at a finding, not at a part: only the counts of the build tell which. Look at them all.
    if (record.kind === 'acceptance') for (const each of scene.index.parts()) stale.add(each.id);
  }
  return stale;
}

function lineOf(scene: Scene, id: PartId): PartLine {
  const part = scene.index.part(id)!;
  return {
    id,
    name: part.name,
    number: part.number,
    make: part.make,
    material: part.material,
    quantity: part.quantity,
    gates: scene.works.gatesOf(id).map(({ gate, state, because }) => ({ gate, state, reasons: because.length })),
    counts: countFindings(scene.works.findingsOf(id)),
    stations: scene.index.stationsOf(id).length,
    dimensions: scene.index.dimensionsOf(id).length,
  };
}
