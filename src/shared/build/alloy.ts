import { z } from 'zod';
import { type Alloy, type AlloyFigure, type AlloyKey, alloyKeys, alloyNamed } from '../tables/alloys.ts';
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

const asAlloys = new WeakMap<OwnAlloy, Alloy>();

/**
 * The record as look-ups hand alloys out: its own figures, and those of the table's alloy of that name where it has none. The
 * same object for the same record.
 */
export function alloyOf(record: OwnAlloy): Alloy {
  const known = asAlloys.get(record);
  if (known) return known;
  const source = record.source.trim() || 'the build’s own row';
  const own = Object.entries(record.figures).flatMap(([key, value]): [AlloyKey, AlloyFigure][] =>
    value === undefined ? [] : [[key as AlloyKey, { value, status: 'read', source }]],
  );
  const figures = { ...alloyNamed<Alloy>(record.name)?.figures, ...Object.fromEntries(own) };
  const made: Alloy = { name: record.name, family: record.family, figures };
  asAlloys.set(record, made);
  return made;
}
