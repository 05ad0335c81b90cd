import type { PartId } from '../../../shared/base/ids.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import { ruleById } from '../../../shared/check/registry.ts';
import type { Department, Finding, Gate, Severity } from '../../../shared/check/rule.ts';
import { wordsOfFinding } from '../finding-words.ts';
import { defineView, type Scene } from '../view.ts';

/** A finding in words, ready to be shown. */
export interface FindingLine {
  readonly key: string;
  readonly rule: string;
  readonly severity: Severity;
  readonly department: Department;
  /** What kind of fault it is, e.g. "Station not placed". */
  readonly title: string;
  readonly sentence: string;
  readonly remedy: string;
  readonly part: PartId | undefined;
  readonly partName: string;
  /** What it points at; the first is selected on going there. */
  readonly at: readonly [RecordId, ...RecordId[]];
  readonly shuts: readonly Gate[];
  readonly acceptable: boolean;
  readonly accepted: AcceptedWords | undefined;
  /** It was accepted at other figures and is open again. */
  readonly lapsed: AcceptedWords | undefined;
  /** The figures that an acceptance now would be given at. */
  readonly figures: string;
  /** It was said of the part as it was before the last edits; the part is being measured anew. */
  readonly isBeingMeasured: boolean;
}

interface AcceptedWords {
  readonly id: RecordId;
  readonly reason: string;
  readonly at: string;
}

export interface FindingsParams {
  /** Only those of one part; null: of the whole build. */
  readonly part: PartId | null;
}

/** Findings in words; a finding that did not change keeps its line. */
export const findingsView = defineView<FindingsParams, readonly FindingLine[]>({
  open: () => {
    let before: readonly Finding[] | undefined;
    let lines: readonly FindingLine[] = [];
    let settings: unknown;
    let namesHeld: unknown;
    let measuredHeld = '';
    let known = new WeakMap<Finding, FindingLine>();
    return (scene, { part }) => {
      const findings = part === null ? scene.works.findings() : scene.works.findingsOf(part);
      const nowSettings = scene.index.settings();
      const names = scene.index.parts();
      const measured = partsBeingMeasured(scene, part).join();
      if (findings === before && settings === nowSettings && names === namesHeld && measured === measuredHeld)
        return lines;
      // Units and names of parts are in the words: when they change, all words are written anew.
      if (settings !== nowSettings || names !== namesHeld) known = new WeakMap();
      before = findings;
      settings = nowSettings;
      namesHeld = names;
      measuredHeld = measured;
      lines = findings.map((finding) => {
        let line = known.get(finding);
        if (line === undefined || line.isBeingMeasured !== isBeingMeasured(scene, finding)) {
          line = lineOfFinding(scene, finding);
          known.set(finding, line);
        }
        return line;
      });
      return lines;
    };
  },
});

const isStandIn = ({ solids }: Scene, part: PartId): boolean => solids.latestOf(part)?.level === 'live';

const partsBeingMeasured = (scene: Scene, part: PartId | null): readonly PartId[] =>
  (part === null ? scene.index.parts().map(({ id }) => id) : [part]).filter((id) => isStandIn(scene, id));

const isBeingMeasured = (scene: Scene, { rule, part }: Finding): boolean =>
  part !== undefined && ruleById(rule)?.ofSurfaces === true && isStandIn(scene, part);

export function lineOfFinding(scene: Scene, finding: Finding): FindingLine {
  const accepted = (acceptance: Finding['accepted']) =>
    acceptance && { id: acceptance.id, reason: acceptance.reason, at: acceptance.acceptedAt };
  return {
    ...wordsOfFinding(scene, finding),
    key: finding.key,
    rule: finding.rule,
    severity: finding.severity,
    department: finding.department,
    part: finding.part,
    partName: finding.part === undefined ? '' : (scene.index.part(finding.part)?.name ?? ''),
    at: finding.at,
    shuts: finding.shuts,
    acceptable: finding.acceptable,
    accepted: accepted(finding.accepted),
    lapsed: accepted(finding.lapsed),
    isBeingMeasured: isBeingMeasured(scene, finding),
  };
}
