import type { PartId } from '../base/ids.ts';
import type { Part } from '../build/part.ts';
import { keepList } from './keep.ts';
import type { Finding, Severity } from './rule.ts';

/** All findings of a build in their order, and by each part that they concern. */
export interface Gathered {
  /** By severity, then part in list order, then rule; those of no part come first. */
  readonly all: readonly Finding[];
  /** The findings of a part and those that point at something of it, in the same order. */
  readonly byPart: ReadonlyMap<PartId, readonly Finding[]>;
}

export interface Gathering {
  /**
   * Puts findings together anew; lists that hold what they held before are the very ones of before.
   * @param findingsOf the findings of the rules of one part.
   * @param whole the findings of the rules of the build.
   * @param owner the part that a record is of.
   */
  gather(
    parts: readonly Part[],
    findingsOf: (part: PartId) => readonly Finding[],
    whole: readonly Finding[],
    owner: (id: string) => PartId | undefined,
  ): Gathered;
  /** To be called when records came, went or passed to another part. */
  forgetOwners(): void;
}

const severities: readonly Severity[] = ['stop', 'caution', 'note'];
const none: readonly Finding[] = [];

/** The findings of one part in order, with what they were sorted from. */
interface Sorted {
  readonly own: readonly Finding[];
  readonly ofBuild: readonly Finding[];
  readonly bySeverity: Readonly<Record<Severity, readonly Finding[]>>;
}

/** Keeps what it sorted, part by part: an edit sorts again only the parts whose findings it changed. */
export function createGathering(): Gathering {
  let gathered: Gathered = { all: none, byPart: new Map() };
  let sorted = new Map<PartId | undefined, Sorted>();
  let concerned = new WeakMap<Finding, readonly PartId[]>();

  function sort(key: PartId | undefined, own: readonly Finding[], ofBuild: readonly Finding[]): Sorted {
    const known = sorted.get(key);
    if (known?.own === own && sameEntries(known.ofBuild, ofBuild)) return known;
    // The sort is stable: of one rule, in the order in which it spoke.
    const list = [...ofBuild, ...own].sort((a, b) => (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0));
    const bySeverity = { stop: [] as Finding[], caution: [] as Finding[], note: [] as Finding[] };
    for (const finding of list) bySeverity[finding.severity].push(finding);
    return { own, ofBuild, bySeverity };
  }

  function group(all: readonly Finding[], owner: (id: string) => PartId | undefined): Gathered['byPart'] {
    const groups = new Map<PartId, Finding[]>();
    for (const finding of all) {
      const parts = concerned.get(finding) ?? partsOf(finding, owner);
      concerned.set(finding, parts);
      for (const part of parts) {
        const list = groups.get(part);
        if (list) list.push(finding);
        else groups.set(part, [finding]);
      }
    }
    const byPart = new Map<PartId, readonly Finding[]>();
    for (const [part, list] of groups) byPart.set(part, keepList(gathered.byPart.get(part), list));
    return byPart;
  }

  return {
    gather(parts, findingsOf, whole, owner) {
      const places = whole.length === 0 ? undefined : new Set(parts.map(({ id }) => id));
      const ofBuild = new Map<PartId | undefined, Finding[]>();
      for (const finding of whole) {
        const key = finding.part && places?.has(finding.part) ? finding.part : undefined;
        const list = ofBuild.get(key);
        if (list) list.push(finding);
        else ofBuild.set(key, [finding]);
      }
      const next = new Map<PartId | undefined, Sorted>();
      next.set(undefined, sort(undefined, none, ofBuild.get(undefined) ?? none));
      for (const { id } of parts) next.set(id, sort(id, findingsOf(id), ofBuild.get(id) ?? none));
      sorted = next;
      const list: Finding[] = [];
      for (const severity of severities) {
        for (const { bySeverity } of next.values()) for (const finding of bySeverity[severity]) list.push(finding);
      }
      const all = keepList(gathered.all, list);
      if (all !== gathered.all) gathered = { all, byPart: group(all, owner) };
      return gathered;
    },
    forgetOwners() {
      concerned = new WeakMap();
    },
  };
}

function partsOf(finding: Finding, owner: (id: string) => PartId | undefined): readonly PartId[] {
  const parts = new Set<PartId>();
  for (const part of [finding.part, ...finding.at.map(owner)]) if (part) parts.add(part);
  return [...parts];
}

const sameEntries = (a: readonly Finding[], b: readonly Finding[]): boolean => keepList(a, b) === a;
