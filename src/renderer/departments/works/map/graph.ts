import type { Edge, Node } from '@xyflow/react';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { LinkPair, PartLink } from '../../../engine/views/links.ts';
import type { OpenedPart } from '../../../engine/views/opened.ts';
import type { Reach } from '../../../engine/views/reach.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import type { Box, LayoutRequest, MapLayout, Point } from './places.ts';
import { CLOSED, type RowPlace, rowPlaces, type SheetRow, sheetRows, sheetSize } from './sheet-rows.ts';

/** `dim`: something is lit up, and this is not part of it. */
export type Look = 'plain' | 'lit' | 'dim';

export interface PartData extends Record<string, unknown> {
  readonly part: PartLine;
  /** Rows of the opened part; undefined while it is closed. */
  readonly rows: readonly SheetRow[] | undefined;
  readonly look: Look;
  readonly selected: boolean;
  readonly subject: RecordId | undefined;
  readonly lit: ReadonlySet<string> | undefined;
}
export type PartNode = Node<PartData, 'part'>;

export interface LinkData extends Record<string, unknown> {
  readonly link: PartLink;
  readonly pairs: readonly LinkPair[];
  readonly path: string;
  readonly label: Point | undefined;
  readonly look: Look;
  /** It begins or ends at the selected part. */
  readonly near: boolean;
}
export type LinkEdge = Edge<LinkData, 'link'>;

const LABEL_MOST = 15;
const CHARACTER_PX = 6.1;

/** Names on a link, each once. */
export const namesOf = (pairs: readonly LinkPair[]): readonly string[] => [...new Set(pairs.map(({ name }) => name))];

/** What stands on the line: the name taken, or the first and how many more. */
export function labelOf({ pairs }: PartLink): string {
  const names = namesOf(pairs);
  const first = names[0] ?? '';
  const short = first.length > LABEL_MOST ? `${first.slice(0, LABEL_MOST - 1).trimEnd()}…` : first;
  return names.length === 1 ? short : `${short} +${names.length - 1}`;
}

/** What the worker needs to lay out; opened parts take the room of their sheet. */
export function layoutRequest(
  parts: readonly PartLine[],
  links: readonly PartLink[],
  opened: Readonly<Record<string, OpenedPart>>,
): LayoutRequest {
  return {
    nodes: parts.map(({ id }) => ({ id, ...(opened[id] === undefined ? CLOSED : sheetSize(sheetRows(opened[id]))) })),
    lines: links.map((link) => ({
      id: link.key,
      from: link.from,
      to: link.to,
      labelWidth: Math.round(labelOf(link).length * CHARACTER_PX) + 10,
    })),
  };
}

interface Shown {
  readonly parts: readonly PartLine[];
  readonly links: readonly PartLink[];
  readonly opened: Readonly<Record<string, OpenedPart>>;
  readonly layout: MapLayout;
  readonly reach: Reach | undefined;
  readonly part: string | undefined;
  readonly subject: RecordId | undefined;
}

/** Parts as the drawing library wants them. A part whose place is not known yet is left out. */
export function nodesOf({ parts, opened, layout, reach, part: selected, subject }: Shown): readonly PartNode[] {
  const reached = reach === undefined ? undefined : new Set<string>(reach.parts);
  const lit = reach === undefined ? undefined : new Set<string>(reach.ids);
  return parts.flatMap((part): PartNode[] => {
    const box = layout.boxes[part.id];
    if (box === undefined) return [];
    const sheet = box.width > CLOSED.width ? opened[part.id] : undefined;
    const data: PartData = {
      part,
      rows: sheet === undefined ? undefined : sheetRows(sheet),
      look: reached === undefined ? 'plain' : reached.has(part.id) ? 'lit' : 'dim',
      selected: part.id === selected,
      subject: part.id === selected ? subject : undefined,
      lit: sheet === undefined ? undefined : lit,
    };
    const { x, y, width, height } = box;
    return [{ id: part.id, type: 'part', position: { x, y }, width, height, data, handles: handlesOf(width, height) }];
  });
}

/** Known beforehand, so that lines to parts out of sight can be drawn without drawing those parts. */
const handlesOf = (width: number, height: number): NonNullable<PartNode['handles']> => [
  { type: 'target', position: 'top' as never, x: width / 2, y: 0, width: 1, height: 1 },
  { type: 'source', position: 'bottom' as never, x: width / 2, y: height, width: 1, height: 1 },
];

/** Lines between parts; where a part is open, one for each dimension, from row to row. */
export function edgesOf({ links, opened, layout, reach, part, subject }: Shown): readonly LinkEdge[] {
  const litLinks = reach === undefined ? undefined : new Set(reach.links);
  const litIds = reach === undefined ? undefined : new Set<string>(reach.ids);
  const wide = (id: string) => (layout.boxes[id]?.width ?? 0) > CLOSED.width;
  return links.flatMap((link): LinkEdge[] => {
    const [from, to] = [layout.boxes[link.from], layout.boxes[link.to]];
    if (from === undefined || to === undefined) return [];
    const near = link.from === part || link.to === part;
    const base = { type: 'link' as const, source: link.from, target: link.to };
    const line = layout.lines[link.key];
    const [fromSheet, toSheet] = [
      wide(link.from) ? opened[link.from] : undefined,
      wide(link.to) ? opened[link.to] : undefined,
    ];
    if (fromSheet === undefined && toSheet === undefined) {
      const points = line?.points ?? [middleBelow(from), middleAbove(to)];
      const look = litLinks === undefined ? 'plain' : litLinks.has(link.key) ? 'lit' : 'dim';
      const data: LinkData = {
        link,
        pairs: link.pairs,
        path: smooth(points),
        label: line?.label ?? (near || look === 'lit' ? halfWay(points) : undefined),
        look,
        near,
      };
      return [{ ...base, id: link.key, data }];
    }
    const [fromRows, toRows] = [fromSheet && rowPlaces(sheetRows(fromSheet)), toSheet && rowPlaces(sheetRows(toSheet))];
    return link.pairs.map((pair): LinkEdge => {
      const ends = [pair.dimension, pair.by] as const;
      const look =
        litIds === undefined ? 'plain' : ends.every((id) => id !== undefined && litIds.has(id)) ? 'lit' : 'dim';
      const start = atRow(from, pair.dimension === undefined ? undefined : fromRows?.get(pair.dimension), to);
      const end = atRow(to, toRows?.get(pair.by), from);
      const data: LinkData = {
        link,
        pairs: [pair],
        path: bend(start ?? { ...middleBelow(from), out: 'down' }, end ?? { ...middleAbove(to), out: 'up' }),
        label: undefined,
        look,
        near: subject === undefined ? near : ends.includes(subject as never),
      };
      return {
        ...base,
        id: `${link.key} ${pair.dimension ?? pair.name} ${pair.by}`,
        data,
      };
    });
  });
}

const middleBelow = (box: Box): Point => ({ x: box.x + box.width / 2, y: box.y + box.height });
const middleAbove = (box: Box): Point => ({ x: box.x + box.width / 2, y: box.y });
/** Where a label goes when the layout kept no room for it. */
const halfWay = (points: readonly Point[]): Point | undefined => {
  const [first, second] = [points[0], points.at(-1)];
  if (first === undefined || second === undefined) return undefined;
  return points.length > 2
    ? points[Math.floor(points.length / 2)]
    : { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 };
};

/** A row is left on the side on which the other end lies, but not past a station that stands beside the dimension. */
function atRow(box: Box, row: RowPlace | undefined, other: Box): End | undefined {
  if (row === undefined) return undefined;
  const isRight = row.isFree && other.x + other.width / 2 > box.x + box.width / 2;
  return { x: isRight ? box.x + box.width : box.x, y: box.y + row.middle, out: isRight ? 'right' : 'left' };
}

/** A line through the points, upright at each of them. */
export function smooth(points: readonly Point[]): string {
  const [first, ...rest] = points;
  if (first === undefined || rest.length === 0) return '';
  let [path, at] = [`M${round(first)}`, first];
  for (const next of rest) {
    const half = (at.y + next.y) / 2;
    path +=
      at.x === next.x
        ? ` L${round(next)}`
        : ` C${round({ x: at.x, y: half })} ${round({ x: next.x, y: half })} ${round(next)}`;
    at = next;
  }
  return path;
}

interface End extends Point {
  readonly out: 'left' | 'right' | 'down' | 'up';
}

/** A line that leaves and arrives square to the edges of the sheets. */
function bend(from: End, to: End): string {
  const reach = Math.min(120, 24 + Math.hypot(to.x - from.x, to.y - from.y) / 4);
  const square = ({ x, y, out }: End): Point => ({
    x: out === 'left' ? x - reach : out === 'right' ? x + reach : x,
    y: out === 'up' ? y - reach : out === 'down' ? y + reach : y,
  });
  return `M${round(from)} C${round(square(from))} ${round(square(to))} ${round(to)}`;
}

const round = ({ x, y }: Point): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
