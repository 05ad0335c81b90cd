import { z } from 'zod';
import type { PartId, StationId } from '../base/ids.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

export const axes = ['X', 'Y', 'Z'] as const;
export type Axis = (typeof axes)[number];

/** What a station is on the casting: a flat face, a shoulder between two diameters, or a centreline. */
export const stationForms = ['face', 'shoulder', 'centreline'] as const;
export type StationForm = (typeof stationForms)[number];

/** A named position along one axis of a part. */
export const stationSchema = z.strictObject({
  kind: z.literal('station'),
  id: idSchema('station'),
  part: idSchema('part'),
  axis: z.enum(axes),
  name: nameSchema,
  form: z.enum(stationForms),
  /** The station that the others of its axis are placed from: at most one per part and axis. */
  datum: z.boolean(),
  note: noteSchema,
  order: orderSchema,
});

export type Station = Readonly<z.infer<typeof stationSchema>>;

export const defaultStation = (id: StationId, part: PartId, axis: Axis, name: string, order: number): Station => ({
  kind: 'station',
  id,
  part,
  axis,
  name,
  form: 'face',
  datum: false,
  note: '',
  order,
});
