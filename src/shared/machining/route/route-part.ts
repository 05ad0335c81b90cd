import type { DimensionId, StationId } from '../../base/ids.ts';
import type { Dimension } from '../../build/dimension.ts';
import type { Machine } from '../../build/machine.ts';
import type { Operation } from '../../build/operation.ts';
import type { Part } from '../../build/part.ts';
import type { Settings } from '../../build/settings.ts';
import type { Setup } from '../../build/setup.ts';
import type { Station } from '../../build/station.ts';
import type { AxisDrawing, ResolvedDimension } from '../../drawing/drawing.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import type { PartSolid } from '../../solid/solids.ts';
import type { Material } from '../../tables/materials.ts';

/** A dimension of the part with what the graph makes of it. */
export interface RouteDimension {
  readonly record: Dimension;
  readonly resolved: Pick<ResolvedDimension, 'value' | 'limits'>;
}

/** A part as its route sees it; the facts of the part have all of this. Lists stand in list order. */
export interface RoutePart {
  readonly settings: Pick<Settings, 'lengthUnit'>;
  readonly part: Part;
  /** Undefined when its name is not known. */
  readonly material: Material | undefined;
  readonly stations: readonly Station[];
  readonly dimensions: readonly RouteDimension[];
  readonly axes: readonly AxisDrawing[];
  readonly bodies: readonly PlacedBody[];
  /** Undefined while it is not worked out. */
  readonly solid: PartSolid | undefined;
  /** Of this part. */
  readonly operations: readonly Operation[];
  /** Of this part, and those of others in which its operations are done. */
  readonly setups: readonly Setup[];
  /** Of the build. */
  readonly machines: readonly Machine[];
}

/** Answers of the drawing by id. */
export interface Answers {
  /** mm from the datum of its axis; undefined where it stands nowhere. */
  at(station: StationId): number | undefined;
  /** Undefined for a size that is not of this part. */
  size(dimension: DimensionId): RouteDimension | undefined;
}

export function answersOf({ dimensions, axes }: Pick<RoutePart, 'dimensions' | 'axes'>): Answers {
  const sizes = new Map(dimensions.map((one) => [one.record.id, one]));
  const places = new Map<StationId, number>();
  for (const { datum, stations } of axes) {
    if (datum === undefined) continue;
    for (const { id, group, at } of stations) if (group === 0) places.set(id, at);
  }
  return { at: (station) => places.get(station), size: (dimension) => sizes.get(dimension) };
}
