import type { DimensionId, PartId, StationId } from '../../../shared/base/ids.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import { defineView, type Scene } from '../view.ts';
import { linkKey } from './links.ts';

/** `touches`: all that changes or moves with it; `hangs on`: all that its own value or place comes from. */
export type Way = 'touches' | 'hangs on';

/** How far a part, station or dimension reaches through formulas and placings, over all parts. */
export interface Reach {
  readonly id: RecordId;
  readonly way: Way;
  /** The part asked about, and every part that is reached. */
  readonly parts: readonly PartId[];
  /** Stations and dimensions that are reached, and what was asked about. */
  readonly ids: readonly RecordId[];
  /** Keys of the links between parts that it goes through. */
  readonly links: readonly string[];
  /** The same as a sentence, with counts. */
  readonly sentence: string;
}

export interface ReachParams {
  readonly id: RecordId;
  readonly way: Way;
}

const PARTS_NAMED = 4;

/** Undefined when there is no such part, station or dimension (any more). */
export const reachView = defineView<ReachParams, Reach | undefined>({
  open:
    () =>
    (scene, { id, way }) => {
      const home = scene.index.partOf(id);
      if (home === undefined) return undefined;
      const found = reachOf(scene, id, home, way);
      const parts = new Set<PartId>([home]);
      const counts = new Map<PartId, number>();
      for (const each of [...found.dimensions, ...found.stations]) {
        const part = scene.index.partOf(each);
        if (part === undefined) continue;
        parts.add(part);
        counts.set(part, (counts.get(part) ?? 0) + 1);
      }
      return {
        id,
        way,
        parts: [...parts].sort(),
        ids: [...found.start, ...found.dimensions, ...found.stations],
        links: linksThrough(scene, [...found.start, ...found.dimensions]),
        sentence: sentenceOf(scene, { id, home, way, counts, ...found }),
      };
    },
});

interface Found {
  /** What was asked about: one record, or all dimensions and stations of a part. */
  readonly start: readonly RecordId[];
  readonly dimensions: readonly DimensionId[];
  readonly stations: readonly StationId[];
}

function reachOf(scene: Scene, id: RecordId, home: PartId, way: Way): Found {
  const { drawing } = scene.works;
  if (scene.index.dimension(id as DimensionId) !== undefined) {
    const found = way === 'touches' ? drawing.touches(id as DimensionId) : drawing.hangsOn(id as DimensionId);
    return { start: [id], ...found };
  }
  if (scene.index.station(id as StationId) !== undefined) {
    if (way === 'hangs on') return { start: [id], ...drawing.hangsOn(id as StationId) };
    const axis = drawing.axesOf(home).find(({ stations }) => stations.some((station) => station.id === id));
    const moved = (axis?.stations ?? [])
      .map((station) => station.id)
      .filter((other) => other !== id && drawing.hangsOn(other).stations.includes(id as StationId));
    return { start: [id], dimensions: [], stations: moved };
  }
  return reachOfPart(scene, home, way);
}

/** Of a part: what its dimensions reach together, its own left out. */
function reachOfPart(scene: Scene, part: PartId, way: Way): Found {
  const { drawing } = scene.works;
  const start = scene.index.dimensionsOf(part).map((dimension) => dimension.id);
  const seen = new Set<DimensionId>(start);
  const queue = [...start];
  for (let at = 0; at < queue.length; at++) {
    const next = way === 'touches' ? drawing.namedBy(queue[at]!) : drawing.dimension(queue[at]!).references;
    for (const id of next) {
      if (seen.has(id)) continue;
      seen.add(id);
      queue.push(id);
    }
  }
  const dimensions = queue.slice(start.length).filter((id) => scene.index.partOf(id) !== part);
  const stations: StationId[] = [];
  if (way === 'touches') {
    for (const other of new Set(dimensions.map((id) => scene.index.partOf(id)!))) {
      for (const axis of drawing.axesOf(other)) {
        for (const { id, path } of axis.stations) if (path.some((step) => seen.has(step))) stations.push(id);
      }
    }
  }
  return { start: [...start, ...scene.index.stationsOf(part).map(({ id }) => id)], dimensions, stations };
}

function linksThrough(scene: Scene, dimensions: readonly RecordId[]): readonly string[] {
  const inside = new Set<string>(dimensions);
  const links = new Set<string>();
  for (const id of dimensions) {
    const record = scene.index.dimension(id as DimensionId);
    if (record === undefined) continue;
    for (const named of scene.works.drawing.dimension(record.id).references) {
      const from = inside.has(named) ? scene.index.partOf(named) : undefined;
      if (from !== undefined && from !== record.part) links.add(linkKey(from, record.part));
    }
  }
  return [...links].sort();
}

interface Told extends Found {
  readonly id: RecordId;
  readonly home: PartId;
  readonly way: Way;
  readonly counts: ReadonlyMap<PartId, number>;
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

function sentenceOf(scene: Scene, { id, home, way, dimensions, stations, counts }: Told): string {
  const partName = (part: PartId): string => scene.index.part(part)?.name ?? '';
  const dimension = scene.index.dimension(id as DimensionId);
  const record = dimension ?? scene.index.station(id as StationId);
  const who = record === undefined ? partName(home) : `${record.name} of ${partName(home)}`;
  if (counts.size === 0) return `${who} ${way} ${nothing(way, record?.kind)}`;
  const what = [
    ...(dimensions.length > 0 ? [counted(dimensions.length, 'dimension')] : []),
    ...(stations.length > 0 ? [counted(stations.length, 'station')] : []),
  ].join(' and ');
  const others = [...counts].filter(([part]) => part !== home).sort((a, b) => b[1] - a[1]);
  const named = others.slice(0, PARTS_NAMED).map(([part, count]) => `${partName(part)} ${count}`);
  const more = others.length - named.length;
  const list = [...named, ...(more > 0 ? [`${counted(more, 'more part')}`] : [])].join(', ');
  if (others.length === 0) return `${who} ${way} ${what}, all in ${partName(home)}.`;
  const own = counts.get(home);
  const inOthers = `in ${counted(others.length, 'other part')} (${list})`;
  return own === undefined
    ? `${who} ${way} ${what} ${inOthers}.`
    : `${who} ${way} ${what}: ${own} in ${partName(home)} itself, the rest ${inOthers}.`;
}

function nothing(way: Way, kind: 'dimension' | 'station' | undefined): string {
  if (kind === undefined)
    return way === 'touches'
      ? 'no other part: no formula elsewhere names its dimensions.'
      : 'no other part: its formulas name none.';
  if (kind === 'station')
    return way === 'touches'
      ? 'nothing: no other station is placed from it.'
      : 'nothing: it is where its chain begins.';
  return way === 'touches'
    ? 'nothing: no formula names it and no station is placed by it.'
    : 'nothing: its value is written out.';
}
