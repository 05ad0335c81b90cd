import { z } from 'zod';
import type { Id } from '../base/ids.ts';

/** Any id of the given kind. The random part is not checked for length: builds of other makers may bring their own. */
export const idSchema = <K extends string>(kind: K) =>
  z.custom<Id<K>>((value) => typeof value === 'string' && value.length <= 80 && value.startsWith(`${kind}:`), {
    message: `an id that begins with "${kind}:"`,
  });

export const nameSchema = z
  .string()
  .min(1)
  .max(120)
  .refine((name) => name === name.trim(), { message: 'a name without spaces at its ends' });

export const noteSchema = z.string().max(20_000);

/** Place in a list. Midpoints between neighbours are free to use; only the order of the numbers means anything. */
export const orderSchema = z.number().refine(Number.isFinite, { message: 'a finite number' });
