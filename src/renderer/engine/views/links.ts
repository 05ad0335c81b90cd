import type { DimensionId, PartId } from '../../../shared/base/ids.ts';
import type { BuildDiff } from '../../../shared/build/diff.ts';
import type { Dimension } from '../../../shared/build/dimension.ts';
import { writtenOptions } from '../../../shared/build/written-options.ts';
import type { Finding, Severity } from '../../../shared/check/rule.ts';
import { nameKey } from '../../../shared/formula/name-key.ts';
import { parseWritten } from '../../../shared/formula/parse-written.ts';
import { defineView, type Scene, type SceneChange } from '../view.ts';

/** A dimension that a formula of another part names. */
export interface LinkPair {
  /** Undefined: the formula names it, but the other part has no dimension of that name. */
  readonly dimension: DimensionId | undefined;
  readonly name: string;
  /** The dimension whose formula names it. */
  readonly by: DimensionId;
  readonly byName: string;
}

/** All that formulas of the part `to` take from the part `from`. */
export interface PartLink {
  readonly key: string;
  readonly from: PartId;
  readonly to: PartId;
  readonly pairs: readonly LinkPair[];
  /** Open findings that point at a dimension at either end, by severity. */
  readonly marks: Readonly<Record<Severity, number>>;
}

export const linkKey = (from: PartId, to: PartId): string => `${from}>${to}`;

interface Taken {
  readonly from: PartId;
  readonly pairs: readonly LinkPair[];
}

/** What one part takes, with the links made of it and the findings that were looked at for their marks. */
interface Held {
  readonly taken: readonly Taken[];
  readonly links: readonly PartLink[];
  readonly looked: readonly (readonly Finding[])[];
}

/**
 * What hangs on what, part by part: for every pair of parts the dimensions that formulas of the one name of the other.
 * In list order of the naming part, then of first mention. A link keeps its identity until it changes.
 */
export const linksView = defineView<null, readonly PartLink[]>({
  open: () => {
    let held = new Map<PartId, Held>();
    let before: readonly PartLink[] = [];
    return (scene, _params, change) => {
      const stale = change === undefined ? undefined : staleParts(scene, change);
      const next = new Map<PartId, Held>();
      const links: PartLink[] = [];
      let partsByName: ReadonlyMap<string, PartId> | undefined;
      const partNamed = (name: string): PartId | undefined => {
        partsByName ??= new Map(scene.index.parts().map((part) => [nameKey(part.name), part.id]));
        return partsByName.get(nameKey(name));
      };
      const bring = (to: PartId): Held => {
        const known = held.get(to);
        const isStale = known === undefined || stale === undefined || stale.has(to);
        if (!isStale && looksTheSame(scene, to, known)) return known;
        const taken = isStale ? keepPairs(known?.taken, takenBy(scene, to, partNamed)) : known.taken;
        return linked(scene, to, taken, known);
      };
      for (const { id } of scene.index.parts()) {
        const now = bring(id);
        next.set(id, now);
        for (const link of now.links) links.push(link);
      }
      held = next;
      if (links.length !== before.length || links.some((link, i) => link !== before[i])) before = links;
      return before;
    };
  },
});

const looksTheSame = (scene: Scene, to: PartId, { taken, looked }: Held): boolean =>
  scene.works.findingsOf(to) === looked[0] &&
  taken.every(({ from }, i) => scene.works.findingsOf(from) === looked[i + 1]);

/** Makes the links of one part anew where its names or the findings at either end are others than before. */
function linked(scene: Scene, to: PartId, taken: readonly Taken[], before: Held | undefined): Held {
  const own = scene.works.findingsOf(to);
  const looked = [own, ...taken.map(({ from }) => scene.works.findingsOf(from))];
  const links = taken.map(({ from, pairs }, i) => {
    const at = before?.taken.findIndex((earlier) => earlier.pairs === pairs) ?? -1;
    const isSame = before?.looked[0] === own && at >= 0 && before.looked[at + 1] === looked[i + 1];
    if (isSame) return before.links[at]!;
    return { key: linkKey(from, to), from, to, pairs, marks: marksOn(pairs, own, looked[i + 1]!) };
  });
  return { taken, links, looked };
}

/** Parts whose formulas may name other dimensions, or by other names, than before. */
function staleParts(scene: Scene, { diff, drawing }: SceneChange): ReadonlySet<PartId> {
  const stale = new Set<PartId>();
  const add = (part: PartId | undefined) => part !== undefined && stale.add(part);
  // A part that comes, goes or is renamed may be one that a formula elsewhere looks for.
  if (touchesParts(diff)) for (const part of scene.index.parts()) stale.add(part.id);
  for (const id of drawing.dimensions) add(scene.index.partOf(id));
  for (const record of [...diff.added, ...diff.removed, ...diff.updated.map(([, to]) => to)]) {
    if (record.kind !== 'dimension') continue;
    add(record.part);
    if (scene.index.dimension(record.id) === undefined) continue;
    for (const by of scene.works.drawing.namedBy(record.id)) add(scene.index.partOf(by));
  }
  return stale;
}

const touchesParts = (diff: BuildDiff): boolean =>
  diff.added.some(({ kind }) => kind === 'part') ||
  diff.removed.some(({ kind }) => kind === 'part') ||
  diff.updated.some(([from, to]) => from.kind === 'part' && to.kind === 'part' && from.name !== to.name);

function takenBy(scene: Scene, part: PartId, partNamed: (name: string) => PartId | undefined): readonly Taken[] {
  const byPart = new Map<PartId, LinkPair[]>();
  const take = (from: PartId, pair: LinkPair) => {
    const pairs = byPart.get(from);
    if (pairs === undefined) byPart.set(from, [pair]);
    else pairs.push(pair);
  };
  for (const dimension of scene.index.dimensionsOf(part)) {
    const { references, problem } = scene.works.drawing.dimension(dimension.id);
    for (const id of references) {
      const named = scene.index.dimension(id);
      if (named === undefined || named.part === part) continue;
      take(named.part, { dimension: id, name: named.name, by: dimension.id, byName: dimension.name });
    }
    if (problem?.why !== 'text') continue;
    for (const { from, ...pair } of writtenNames(scene, dimension, partNamed)) {
      const isTaken = pair.dimension !== undefined && references.includes(pair.dimension);
      if (from !== part && !isTaken) take(from, pair);
    }
  }
  return [...byPart].map(([from, pairs]) => ({ from, pairs }));
}

/** Pairs that say what they said before are the very ones of before. */
const keepPairs = (before: readonly Taken[] | undefined, now: readonly Taken[]): readonly Taken[] =>
  now.map((taken) => {
    const earlier = before?.find(({ from }) => from === taken.from);
    return earlier !== undefined && samePairs(earlier.pairs, taken.pairs) ? earlier : taken;
  });

const samePairs = (a: readonly LinkPair[], b: readonly LinkPair[]): boolean =>
  a.length === b.length &&
  a.every((pair, i) => {
    const other = b[i]!;
    return (
      pair.dimension === other.dimension &&
      pair.name === other.name &&
      pair.by === other.by &&
      pair.byName === other.byName
    );
  });

/** What a formula that cannot be worked out names of other parts all the same: the map must not lose sight of it. */
function* writtenNames(scene: Scene, dimension: Dimension, partNamed: (name: string) => PartId | undefined) {
  const written = parseWritten(dimension.value, writtenOptions(dimension.measure, scene.index.settings().lengthUnit));
  if (!written.ok || written.value.is !== 'formula') return;
  for (const reference of written.value.formula.references) {
    const from = reference.part === undefined ? undefined : partNamed(reference.part);
    if (from === undefined) continue;
    const named = scene.index.dimensionsOf(from).find(({ name }) => nameKey(name) === nameKey(reference.name));
    const name = named?.name ?? reference.name;
    yield { from, dimension: named?.id, name, by: dimension.id, byName: dimension.name };
  }
}

function marksOn(pairs: readonly LinkPair[], ...lists: readonly (readonly Finding[])[]): PartLink['marks'] {
  const ends = new Set<string>();
  for (const { dimension, by } of pairs) {
    ends.add(by);
    if (dimension !== undefined) ends.add(dimension);
  }
  const marks = { stop: 0, caution: 0, note: 0 };
  // A finding that concerns both parts stands in both lists, and counts once.
  const seen = new Set<Finding>();
  for (const finding of lists.flat()) {
    if (finding.accepted !== undefined || seen.has(finding) || !finding.at.some((id) => ends.has(id))) continue;
    seen.add(finding);
    marks[finding.severity]++;
  }
  return marks;
}
