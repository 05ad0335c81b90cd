import { z } from 'zod';
import type { Id } from '../base/ids.ts';

/**
 * Any id of the given kind. The part after the colon is not held to our own length and alphabet: builds of other makers
 * may bring their own. Commas are out, because a finding's key joins ids with them.
 */
export const idSchema = <K extends string>(kind: K) =>
  z
    .string()
    .max(80)
    .regex(new RegExp(`^${kind}:[A-Za-z0-9._-]+$`), {
      message: `an id that begins with "${kind}:"`,
      // A cast instead of a transform: the branded type is only a view on the string, and JSON Schema shows the string.
    }) as unknown as z.ZodType<Id<K>, Id<K>>;

export const nameSchema = z
  .string()
  .min(1)
  .max(120)
  .regex(/^\S(?:[\s\S]*\S)?$/, { message: 'a name without spaces at its ends' });

export const noteSchema = z.string().max(20_000);

/** Place in a list. Midpoints between neighbours are free to use; only the order of the numbers means anything. */
export const orderSchema = z.number();
