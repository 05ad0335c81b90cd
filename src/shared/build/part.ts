import { z } from 'zod';
import type { PartId } from '../base/ids.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

/** How a part comes to be: poured, cut from bar or plate, or bought ready. */
export const makes = ['cast', 'stock', 'bought'] as const;
export type Make = (typeof makes)[number];

/** An item of the machine. */
export const partSchema = z.strictObject({
  kind: z.literal('part'),
  id: idSchema('part'),
  name: nameSchema,
  /** Drawing number as printed on the sheet; may be empty. */
  number: z.string().max(60),
  /** Sheet on which the part is drawn; may be empty. */
  sheet: z.string().max(60),
  make: z.enum(makes),
  /** Material by name, as the materials table or the user's own rows call it; empty = not said yet. */
  material: z.string().max(120),
  quantity: z.number().int().min(1).max(10_000),
  note: noteSchema,
  /** Place in the list of parts: smaller first, ties by id. */
  order: orderSchema,
});

export type Part = Readonly<z.infer<typeof partSchema>>;

export const defaultPart = (id: PartId, name: string, order: number): Part => ({
  kind: 'part',
  id,
  name,
  number: '',
  sheet: '',
  make: 'cast',
  material: '',
  quantity: 1,
  note: '',
  order,
});
