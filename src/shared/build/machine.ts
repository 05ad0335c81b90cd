import { z } from 'zod';
import type { MachineId } from '../base/ids.ts';
import { type MachineType, machineTypes } from '../tables/machine-figures.ts';
import { writtenSchema } from './amount.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

/**
 * A machine or a fixed piece of the shop, as copied into the build so that the file stands alone. The same id stands for
 * the same machine in the user's own shop and in every build.
 */
export const machineSchema = z.strictObject({
  kind: z.literal('machine'),
  id: idSchema('machine'),
  name: nameSchema,
  type: z.enum(machineTypes),
  /** What is known of it, as written, by the keys of `tables/machine-figures.ts` for its type. What is absent is unknown. */
  figures: z.record(z.string().regex(/^[a-z][A-Za-z0-9]{0,40}$/), writtenSchema),
  /**
   * Upper outline of a lathe's bed across its length, seen from the tailstock: places to the back (front negative) and down
   * from the line of centres, in order from front to back. Empty = flat, at the height of centres.
   */
  bed: z.array(z.strictObject({ across: writtenSchema, down: writtenSchema })).max(60),
  /** A generic row of its size class, not yet held against the machine itself. */
  generic: z.boolean(),
  note: noteSchema,
  order: orderSchema,
});
export type Machine = Readonly<z.infer<typeof machineSchema>>;

export const defaultMachine = (id: MachineId, name: string, type: MachineType, order: number): Machine => ({
  kind: 'machine',
  id,
  name,
  type,
  figures: {},
  bed: [],
  generic: false,
  note: '',
  order,
});
