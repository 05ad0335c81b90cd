import type { DimensionId, PartId, StationId } from '../../../shared/base/ids.ts';
import type { Dimension, Source } from '../../../shared/build/dimension.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import type { Axis } from '../../../shared/build/station.ts';
import type { Severity } from '../../../shared/check/rule.ts';
import type { AxisDrawing } from '../../../shared/drawing/drawing.ts';
import { show } from '../show.ts';
import { defineView, type Scene } from '../view.ts';
import { marksOf } from './part.ts';

/** What a station or dimension is tied to, one step away. */
export interface Tied {
  readonly id: RecordId;
  readonly name: string;
  readonly part: PartId;
}

interface Line {
  readonly name: string;
  /** Value or place as shown; undefined while there is none. */
  readonly value: string | undefined;
  readonly mark: Severity | undefined;
  readonly touches: readonly Tied[];
  readonly hangsOn: readonly Tied[];
}

export interface OpenedDimension extends Line {
  readonly id: DimensionId;
  readonly source: Source;
  /** The station that it places, when it places one. */
  readonly places: StationId | undefined;
}

export interface OpenedStation extends Line {
  readonly id: StationId;
  readonly datum: boolean;
}

/** One axis of a part, or its sizes. */
export interface OpenedGroup {
  readonly axis: Axis | undefined;
  readonly dimensions: readonly OpenedDimension[];
  /** By place along the axis; those that are not placed come last. */
  readonly stations: readonly OpenedStation[];
}

/** A part opened to its stations and dimensions. */
export interface OpenedPart {
  readonly id: PartId;
  readonly groups: readonly OpenedGroup[];
}

/** The parts that are open on the map, each by its id. A part that is gone is left out. */
export const openedView = defineView<{ readonly parts: readonly PartId[] }, Readonly<Record<string, OpenedPart>>>({
  open:
    () =>
    (scene, { parts }) => {
      const opened: Record<string, OpenedPart> = {};
      for (const id of parts) if (scene.index.part(id) !== undefined) opened[id] = openPart(scene, id);
      return opened;
    },
});

function openPart(scene: Scene, id: PartId): OpenedPart {
  const marks = marksOf(scene.works.findingsOf(id));
  const axes = scene.works.drawing.axesOf(id);
  const dimensions = scene.index.dimensionsOf(id);
  const axisOf = (dimension: Dimension): Axis | undefined =>
    dimension.measure.type === 'between' ? scene.index.station(dimension.measure.from)?.axis : undefined;
  const places = new Map<DimensionId, StationId>();
  for (const { stations } of axes) {
    for (const station of stations) {
      const last = station.path.at(-1);
      if (last !== undefined) places.set(last, station.id);
    }
  }
  const dimensionLines = (axis: Axis | undefined): OpenedDimension[] =>
    dimensions
      .filter((dimension) => axisOf(dimension) === axis)
      .map((record) => ({ ...openDimension(scene, record, places.get(record.id)), mark: marks.get(record.id) }));
  const groups: OpenedGroup[] = axes.map((drawing) => ({
    axis: drawing.axis,
    dimensions: dimensionLines(drawing.axis),
    stations: openStations(scene, drawing, marks),
  }));
  const sizes = dimensionLines(undefined);
  if (sizes.length > 0) groups.push({ axis: undefined, dimensions: sizes, stations: [] });
  return { id, groups };
}

function openDimension(scene: Scene, record: Dimension, places: StationId | undefined): Omit<OpenedDimension, 'mark'> {
  const { drawing } = scene.works;
  const { value, references } = drawing.dimension(record.id);
  const station = places === undefined ? [] : [tied(scene, places, record.part)];
  return {
    id: record.id,
    name: record.name,
    source: record.source,
    value:
      value === undefined ? undefined : show(value, kindOfMeasure(record.measure), scene.index.settings().lengthUnit),
    places,
    touches: [...drawing.namedBy(record.id).map((id) => tied(scene, id, record.part)), ...station],
    hangsOn: references.map((id) => tied(scene, id, record.part)),
  };
}

function openStations(scene: Scene, drawing: AxisDrawing, marks: ReadonlyMap<string, Severity>): OpenedStation[] {
  const unit = scene.index.settings().lengthUnit;
  const reached = (group: number): boolean => group === 0 && drawing.datum !== undefined;
  /** The other end of the last dimension of its chain. */
  const parentOf = ({ id, path }: AxisDrawing['stations'][number]): StationId | undefined => {
    const last = path.at(-1);
    const measure = last === undefined ? undefined : scene.index.dimension(last)?.measure;
    if (measure?.type !== 'between') return undefined;
    return measure.from === id ? measure.to : measure.from;
  };
  const children = new Map<StationId, StationId[]>();
  for (const station of drawing.stations) {
    const parent = parentOf(station);
    if (parent === undefined) continue;
    const list = children.get(parent);
    if (list === undefined) children.set(parent, [station.id]);
    else list.push(station.id);
  }
  return [...drawing.stations]
    .sort((a, b) => Number(reached(b.group)) - Number(reached(a.group)) || a.group - b.group || a.at - b.at)
    .map((station) => {
      const record = scene.index.station(station.id)!;
      const last = station.path.at(-1);
      const parent = parentOf(station);
      const on = [...(last === undefined ? [] : [last]), ...(parent === undefined ? [] : [parent])];
      return {
        id: station.id,
        name: record.name,
        datum: record.datum,
        value: reached(station.group) ? show(station.at, 'length', unit) : undefined,
        mark: marks.get(station.id),
        touches: (children.get(station.id) ?? []).map((id) => tied(scene, id, record.part)),
        hangsOn: on.map((id) => tied(scene, id, record.part)),
      };
    });
}

function tied(scene: Scene, id: DimensionId | StationId, home: PartId): Tied {
  const record = scene.index.dimension(id as DimensionId) ?? scene.index.station(id as StationId);
  const part = record?.part ?? home;
  const where = part === home ? '' : ` of ${scene.index.part(part)?.name ?? ''}`;
  return { id, name: `${record?.name ?? ''}${where}`, part };
}
