import type { PartId } from '../../../../shared/base/ids.ts';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { Severity } from '../../../../shared/check/rule.ts';
import type { PartLink } from '../../../engine/views/links.ts';
import type { OpenedDimension, OpenedGroup, OpenedPart, OpenedStation, Tied } from '../../../engine/views/opened.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import { findingsInWords, linkInWords } from '../map/words.ts';

/** A row of the tree. What it shows is the same that the map shows. */
export interface ListRow {
  readonly key: string;
  readonly level: 1 | 2 | 3 | 4;
  readonly at: number;
  readonly of: number;
  /** Undefined: there is nothing below it. */
  readonly expanded: boolean | undefined;
  readonly shows: RowShows;
  /** Where the row goes; undefined for headings. */
  readonly part: PartId;
  readonly subject: RecordId | undefined;
}

export type RowShows =
  | { readonly kind: 'part'; readonly line: PartLine; readonly feeds: number; readonly hangsOn: number }
  | {
      readonly kind: 'link';
      readonly way: 'feeds' | 'hangs on';
      readonly name: string;
      readonly words: string;
      readonly findings: string | undefined;
      readonly link: string;
    }
  | { readonly kind: 'group'; readonly title: string; readonly count: number }
  | {
      readonly kind: 'line';
      readonly is: 'station' | 'dimension';
      readonly name: string;
      readonly value: string;
      readonly note: string;
      readonly mark: Severity | undefined;
    }
  | { readonly kind: 'tied'; readonly way: 'touches' | 'hangs on'; readonly name: string };

interface Folds {
  /** Keys of rows below parts that stand open; groups are open unless they are named in `folded`. */
  readonly unfolded: ReadonlySet<string>;
  readonly folded: ReadonlySet<string>;
}

type Draft = Omit<ListRow, 'at' | 'of'>;

/** Counts each run of rows below one parent. */
const numbered = (rows: readonly (readonly [Draft, readonly ListRow[]])[]): ListRow[] =>
  rows.flatMap(([row, below], i) => [{ ...row, at: i + 1, of: rows.length }, ...below]);

/** The tree as it stands open: part, then links and axes, then stations and dimensions, then what each is tied to. */
export function listRows(
  parts: readonly PartLine[],
  links: readonly PartLink[],
  opened: Readonly<Record<string, OpenedPart>>,
  folds: Folds,
): readonly ListRow[] {
  const names = new Map(parts.map(({ id, name }) => [id, name]));
  const [from, to] = [by(links, 'from'), by(links, 'to')];
  return numbered(
    parts.map((line) => {
      const [feeds, hangsOn] = [from.get(line.id) ?? [], to.get(line.id) ?? []];
      const sheet = opened[line.id];
      const row: Draft = {
        key: line.id,
        level: 1,
        expanded: sheet !== undefined,
        shows: { kind: 'part', line, feeds: feeds.length, hangsOn: hangsOn.length },
        part: line.id,
        subject: undefined,
      };
      if (sheet === undefined) return [row, []];
      return [
        row,
        numbered([
          ...hangsOn.map((link) => [linkRow(line.id, link, 'hangs on', names), []] as const),
          ...feeds.map((link) => [linkRow(line.id, link, 'feeds', names), []] as const),
          ...sheet.groups.map((group) => groupRows(line.id, group, folds)),
        ]),
      ];
    }),
  );
}

function by(links: readonly PartLink[], end: 'from' | 'to'): ReadonlyMap<PartId, readonly PartLink[]> {
  const groups = new Map<PartId, PartLink[]>();
  for (const link of links) {
    const group = groups.get(link[end]);
    if (group === undefined) groups.set(link[end], [link]);
    else group.push(link);
  }
  return groups;
}

function linkRow(home: PartId, link: PartLink, way: 'feeds' | 'hangs on', names: ReadonlyMap<PartId, string>): Draft {
  const other = way === 'feeds' ? link.to : link.from;
  const shows = {
    kind: 'link',
    way,
    name: names.get(other) ?? '',
    words: linkInWords(link),
    findings: findingsInWords(link.marks),
    link: link.key,
  } as const;
  return { key: `${home} ${way} ${other}`, level: 2, expanded: undefined, shows, part: other, subject: undefined };
}

function groupRows(
  part: PartId,
  { axis, stations, dimensions }: OpenedGroup,
  folds: Folds,
): readonly [Draft, readonly ListRow[]] {
  const key = `${part} ${axis ?? 'sizes'}`;
  const expanded = !folds.folded.has(key);
  const shows = {
    kind: 'group',
    title: axis === undefined ? 'Sizes' : `Axis ${axis}`,
    count: stations.length + dimensions.length,
  } as const;
  const row: Draft = { key, level: 2, expanded, shows, part, subject: undefined };
  if (!expanded) return [row, []];
  const lines = [
    ...stations.map((each) => lineRows(part, each, 'station', folds)),
    ...dimensions.map((each) => lineRows(part, each, 'dimension', folds)),
  ];
  return [row, numbered(lines)];
}

function lineRows(
  part: PartId,
  each: OpenedStation | OpenedDimension,
  is: 'station' | 'dimension',
  folds: Folds,
): readonly [Draft, readonly ListRow[]] {
  const tied = [
    ...each.hangsOn.map((other) => ({ way: 'hangs on', other }) as const),
    ...each.touches.map((other) => ({ way: 'touches', other }) as const),
  ];
  const expanded = tied.length === 0 ? undefined : folds.unfolded.has(each.id);
  const note = 'datum' in each && each.datum ? 'datum' : 'source' in each ? each.source : '';
  const value = each.value ?? (is === 'station' ? 'not placed' : 'no value');
  const shows = { kind: 'line', is, name: each.name, value, note, mark: each.mark } as const;
  const row: Draft = { key: each.id, level: 3, expanded, shows, part, subject: each.id };
  return [row, expanded === true ? numbered(tied.map(({ way, other }) => [tiedRow(each.id, way, other), []])) : []];
}

const tiedRow = (home: RecordId, way: 'touches' | 'hangs on', { id, name, part }: Tied): Draft => ({
  key: `${home} ${way} ${id}`,
  level: 4,
  expanded: undefined,
  shows: { kind: 'tied', way, name },
  part,
  subject: id,
});
