import type { DimensionId, SolidId, StationId } from '../base/ids.ts';
import type { SizeRole } from '../build/body-uses.ts';
import type { CodedMesh } from '../build/mesh-code.ts';
import type { Point } from './outline.ts';

/** The numbers behind the ids that a body names; all of them are known when a shape is placed. */
export interface Places {
  /** mm from the datum of the station's axis. */
  at(station: StationId): number;
  /** In mm, degrees or as a number. */
  size(dimension: DimensionId, role: SizeRole): number;
  /** Pitch in mm of a dimension of form thread; undefined when it is not known. */
  pitch(dimension: DimensionId): number | undefined;
  /** Whether the dimension is a thread. */
  isThread(dimension: DimensionId): boolean;
  mesh(solid: SolidId): CodedMesh;
}

/** A point across an axis: a station of each of the two other axes. */
export type Across = readonly [StationId, StationId];
export const pointAt = ([u, v]: Across, places: Places): Point => ({ u: places.at(u), v: places.at(v) });
