import { z } from 'zod';
import { isBase64 } from '../base/base64.ts';
import { idSchema, nameSchema, noteSchema } from './fields.ts';

/** Units that files of meshes are drawn in. */
export const meshUnits = ['mm', 'cm', 'm', 'in', 'ft'] as const;
export type MeshUnit = (typeof meshUnits)[number];

/** About two million vertices or five million triangles: more than any part that a home foundry pours. */
const MAX_CODED = 80_000_000;

const coded = z.string().max(MAX_CODED).refine(isBase64, { message: 'base64 with its padding' });

/** A closed mesh that was brought in from a file. Bodies of shape `imported` put it in its place. */
export const solidSchema = z.strictObject({
  kind: z.literal('solid'),
  id: idSchema('solid'),
  name: nameSchema,
  /** Name of the file it came from, without folders; for the record only. */
  fileName: z.string().max(260),
  /** The unit that the file's numbers were taken as. The vertices below are in mm already. */
  unit: z.enum(meshUnits),
  /** x, y, z of each vertex in mm: 64-bit floating point, little-endian, as base64. */
  vertices: coded,
  /** Three vertex numbers per triangle, counter-clockwise from outside: 32-bit, little-endian, as base64. */
  triangles: coded,
  note: noteSchema,
});

export type Solid = Readonly<z.infer<typeof solidSchema>>;
