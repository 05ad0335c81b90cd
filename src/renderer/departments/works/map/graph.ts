import type { Edge, Node } from '@xyflow/react';
import type { RecordId } from '../../../../shared/build/records.ts';
import type { LinkPair, PartLink } from '../../../engine/views/links.ts';
import type { OpenedPart } from '../../../engine/views/opened.ts';
import type { Reach } from '../../../engine/views/reach.ts';
import type { PartLine } from '../../../engine/views/summary.ts';
import type { Box, LayoutRequest, MapLayout, Point } from './layout.ts';
import { CLOSED, rowMiddles, type SheetRow, sheetRows, sheetSize } from './sheet-rows.ts';

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

const LABEL_MOST = 20;
const CHARACTER_PX = 6.1;

/** Names on a link, each once. */
export const namesOf = (pairs: readonly LinkPair[]): readonly string[] => [...new Set(pairs.map(({ name }) => name))];

/** What stands on the line: the name, or how many there are and the first of them. */
export function labelOf({ pairs }: PartLink): string {
  const names = namesOf(pairs);
  const first = names[0] ?? '';
  const short = first.length > LABEL_MOST ? `${first.slice(0, LABEL_MOST - 1).trimEnd()}…` : first;
  return names.length === 1 ? short : `${names.length}: ${short}, …`;
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
        label: line?.label ?? halfWay(points),
        look,
        near,
      };
      return [{ ...base, id: link.key, data, zIndex: look === 'lit' ? 1 : 0 }];
    }
    const [fromRows, toRows] = [
      fromSheet && rowMiddles(sheetRows(fromSheet)),
      toSheet && rowMiddles(sheetRows(toSheet)),
    ];
    return link.pairs.map((pair): LinkEdge => {
      const ends = [pair.dimension, pair.by] as const;
      const look =
        litIds === undefined ? 'plain' : ends.every((id) => id !== undefined && litIds.has(id)) ? 'lit' : 'dim';
      const start = atRow(from, pair.dimension === undefined ? undefined : fromRows?.get(pair.dimension));
      const end = atRow(to, toRows?.get(pair.by));
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
        zIndex: look === 'lit' ? 1 : 0,
      };
    });
  });
}

const middleBelow = (box: Box): Point => ({ x: box.x + box.width / 2, y: box.y + box.height });
const middleAbove = (box: Box): Point => ({ x: box.x + box.width / 2, y: box.y });
const halfWay = (points: readonly Point[]): Point | undefined => points[Math.floor(points.length / 2)];
const atRow = (box: Box, middle: number | undefined): End | undefined =>
  middle === undefined ? undefined : { x: box.x, y: box.y + middle, out: 'left' };

/** A line through the points, its corners rounded. */
export function smooth(points: readonly Point[]): string {
  const [first, ...rest] = points;
  const last = rest.at(-1);
  if (first === undefined || last === undefined) return '';
  let path = `M${round(first)}`;
  for (let i = 0; i < rest.length - 1; i++) {
    const [corner, next] = [rest[i]!, rest[i + 1]!];
    const to = i === rest.length - 2 ? last : { x: (corner.x + next.x) / 2, y: (corner.y + next.y) / 2 };
    path += ` Q${round(corner)} ${round(to)}`;
  }
  return rest.length === 1 ? `${path} L${round(last)}` : path;
}

interface End extends Point {
  readonly out: 'left' | 'down' | 'up';
}

/** A line that leaves and arrives square to the edges of the sheets. */
function bend(from: End, to: End): string {
  const reach = Math.min(120, 24 + Math.hypot(to.x - from.x, to.y - from.y) / 4);
  const square = ({ x, y, out }: End): Point =>
    out === 'left' ? { x: x - reach, y } : { x, y: out === 'down' ? y + reach : y - reach };
  return `M${round(from)} C${round(square(from))} ${round(square(to))} ${round(to)}`;
}

const round = ({ x, y }: Point): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
