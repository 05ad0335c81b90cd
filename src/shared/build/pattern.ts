import { z } from 'zod';
import type { PartId, PatternId } from '../base/ids.ts';
import { writtenSchema } from './amount.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

/** Time of day with its date, ISO 8601 in UTC. */
export const momentSchema = z.iso.datetime();

const weighingSchema = z.strictObject({ at: momentSchema, mass: writtenSchema, where: z.string().max(200) });
export type Weighing = Readonly<z.infer<typeof weighingSchema>>;

/** A pattern that was really made: measured before it is coated, weighed while it dries. */
export const patternSchema = z.strictObject({
  kind: z.literal('pattern'),
  id: idSchema('pattern'),
  part: idSchema('part'),
  name: nameSchema,
  /** What was measured on it, by the stable key of the inspection sheet's line. */
  measured: z.array(z.strictObject({ of: z.string().max(200), value: writtenSchema })).max(300),
  /** The same lines measured on the casting that came of it: the founder's own contraction is learnt from both. */
  cast: z.array(z.strictObject({ of: z.string().max(200), value: writtenSchema })).max(300),
  /** Tried on the real machine before coating. */
  trials: z.array(z.strictObject({ what: nameSchema, fits: z.boolean(), at: momentSchema, note: noteSchema })).max(60),
  /** Mass before the coating, of the pattern with what is built into it. */
  bare: writtenSchema,
  /** Smallest step of the scale. */
  scaleStep: writtenSchema,
  /** Dry when, time and again, so many hours take no more than so many percent of the coating; empty = the starting values. */
  rule: z.strictObject({ percent: writtenSchema, hours: writtenSchema }),
  /** The coating holds plaster: bound water leaves only far above drying temperatures. */
  plaster: z.boolean(),
  /** With the coating on it, in order of time, one at a moment. */
  weighings: z.array(weighingSchema).max(500),
  /** Poured undried or unproved, taken upon oneself in words; empty = not. */
  takenOn: z.string().max(2_000),
  note: noteSchema,
  order: orderSchema,
});
export type Pattern = Readonly<z.infer<typeof patternSchema>>;

export const defaultPattern = (id: PatternId, part: PartId, name: string, order: number): Pattern => ({
  kind: 'pattern',
  id,
  part,
  name,
  measured: [],
  cast: [],
  trials: [],
  bare: '',
  scaleStep: '',
  rule: { percent: '', hours: '' },
  plaster: false,
  weighings: [],
  takenOn: '',
  note: '',
  order,
});
