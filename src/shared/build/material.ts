import { z } from 'zod';
import { cuttingGroups } from '../tables/cutting-metals.ts';
import type { Material } from '../tables/materials.ts';
import { idSchema, nameSchema } from './fields.ts';

const positive = z.number().positive();

/** What is known of the material; what is not known is left out. */
const valuesSchema = z.strictObject({
  densityKgM3: positive.max(30_000).optional(),
  /** Mean coefficient from 20 to 100 °C; a few materials shrink when they get warm. */
  expansionPerK: z.number().min(-0.001).max(0.001).optional(),
  modulusGPa: positive.max(2_000).optional(),
  cuttingGroup: z.enum(cuttingGroups).optional(),
});

/** A material of the build's own. Parts name it; where the table knows the name too, this one holds. */
export const materialSchema = z.strictObject({
  kind: z.literal('material'),
  id: idSchema('material'),
  name: nameSchema,
  values: valuesSchema,
  /** Where the values come from: a certificate, a weighed bar; may be empty. */
  source: z.string().max(2_000),
});

export type OwnMaterial = Readonly<z.infer<typeof materialSchema>>;

const asMaterials = new WeakMap<OwnMaterial, Material>();

/** The record as look-ups hand materials out; the same object for the same record. */
export function materialOf(record: OwnMaterial): Material {
  const known = asMaterials.get(record);
  if (known) return known;
  const made: Material = { name: record.name, ...record.values, source: record.source || 'the build’s own row' };
  asMaterials.set(record, made);
  return made;
}
