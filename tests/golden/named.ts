import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { dimensionsOf, partsOf, stationsOf } from '../../src/shared/build/look-up.ts';
import type { Build } from '../../src/shared/build/records.ts';
import type { Axis } from '../../src/shared/build/station.ts';
import type { Drawing } from '../../src/shared/drawing/drawing.ts';

/** A machine asked by the names on its drawings. */
export interface Named {
  part(name: string): PartId;
  station(part: string, axis: Axis, name: string): StationId;
  dimension(part: string, name: string): DimensionId;
  /** Place of a station from its axis's datum in mm; undefined when nothing ties it there. */
  place(part: string, axis: Axis, name: string): number | undefined;
  value(part: string, name: string): number | undefined;
  /** `guide column: foot width`, for any id of the build. */
  nameOf(id: string): string;
}

export function named(build: Build, drawing: Drawing): Named {
  const one = <R extends { readonly name: string }>(records: readonly R[], name: string): R => {
    const found = records.filter((record) => record.name === name);
    if (found.length !== 1) throw new Error(`${found.length} records are called ${name}`);
    return found[0]!;
  };
  const part = (name: string): PartId => one(partsOf(build), name).id;
  const station = (of: string, axis: Axis, name: string): StationId => one(stationsOf(build, part(of), axis), name).id;
  const dimension = (of: string, name: string): DimensionId => one(dimensionsOf(build, part(of)), name).id;
  return {
    part,
    station,
    dimension,
    place(of, axis, name) {
      const id = station(of, axis, name);
      const layout = drawing.axesOf(part(of)).find((drawn) => drawn.axis === axis);
      const placed = layout?.stations.find((candidate) => candidate.id === id);
      return placed?.group === 0 && layout?.datum !== undefined ? placed.at : undefined;
    },
    value: (of, name) => drawing.dimension(dimension(of, name)).value,
    nameOf(id) {
      const record = build.get(id as DimensionId);
      if (record?.kind === 'part') return record.name;
      if (record?.kind !== 'station' && record?.kind !== 'dimension' && record?.kind !== 'body') return id;
      const owner = build.get(record.part);
      return `${owner?.kind === 'part' ? owner.name : '?'}: ${record.name}`;
    },
  };
}
