import { z } from 'zod';
import { alloyKeys } from '../tables/alloys.ts';
import { idSchema, nameSchema } from './fields.ts';

/** An alloy of the build's own, or figures of one's own for an alloy of the table. What is left out is taken from the table. */
export const alloySchema = z.strictObject({
  kind: z.literal('alloy'),
  id: idSchema('alloy'),
  name: nameSchema,
  family: z.enum(['aluminium', 'zinc', 'copper', 'iron']),
  figures: z.partialRecord(z.enum(alloyKeys), z.number().min(-50).max(30_000)),
  /** Where the figures come from: a certificate, a measured casting; may be empty. */
  source: z.string().max(2_000),
});
export type OwnAlloy = Readonly<z.infer<typeof alloySchema>>;
