import { z } from 'zod';
import type { DimensionId, StationId } from '../base/ids.ts';
import { idSchema } from './fields.ts';

/** A quantity exactly as written: `62`, `2-1/2"`, `0.8 kW`; empty = not said. */
export const writtenSchema = z.string().max(200);

/** A number that a plan of work needs: a size of the drawing, else what is written here. Nothing of both: not said. */
export const amountSchema = z.strictObject({
  size: idSchema('dimension').optional(),
  /** Used when no size is named. */
  written: writtenSchema,
});
export interface Amount {
  readonly size?: DimensionId | undefined;
  readonly written: string;
}

/** A place along an axis of a part: a station, and how far beyond it, in the direction of the axis (negative: before it). */
export const placeSchema = z.strictObject({
  station: idSchema('station'),
  /** A length as written; empty = at the station. */
  beyond: writtenSchema,
});
export interface Place {
  readonly station: StationId;
  readonly beyond: string;
}
