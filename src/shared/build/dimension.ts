import { z } from 'zod';
import type { DimensionId, PartId } from '../base/ids.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

/** Where a written value comes from; an *assumed* one is sketched in and keeps gates shut until confirmed. */
export const sources = ['drawn', 'measured', 'assumed', 'derived'] as const;
export type Source = (typeof sources)[number];

/** What a size measures. `length` is a size of no fixed place (a wall thickness); the rest as named. */
export const sizeForms = ['diameter', 'radius', 'length', 'angle', 'thread', 'count', 'mass', 'temperature'] as const;
export type SizeForm = (typeof sizeForms)[number];

/** Which surface a dimension speaks of: it chooses the general tolerance where no limits are written. */
export const finishes = ['as cast', 'machined'] as const;
export type Finish = (typeof finishes)[number];

/** What a dimension measures: the signed distance from one station to another of the same axis, or a size. */
export const measureSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('between'), from: idSchema('station'), to: idSchema('station') }),
  z.strictObject({ type: z.literal('size'), form: z.enum(sizeForms) }),
]);
export type Measure = Readonly<z.infer<typeof measureSchema>>;

export const dimensionSchema = z.strictObject({
  kind: z.literal('dimension'),
  id: idSchema('dimension'),
  part: idSchema('part'),
  /** Name by which formulas refer to it; unique within its part, upper and lower case alike. */
  name: nameSchema,
  measure: measureSchema,
  /** The value exactly as written: `62`, `1-3/8"`, `2 * wall + bore of column`; empty = the drawing gives none. */
  value: z.string().max(2_000),
  /** The limits exactly as written: `±0.1`, `+0.2/-0`; empty = left to the build's general tolerance. */
  limits: z.string().max(200),
  source: z.enum(sources),
  finish: z.enum(finishes),
  /** Sheet on which it is written; empty = the part's sheet. */
  sheet: z.string().max(60),
  note: noteSchema,
  order: orderSchema,
});

export type Dimension = Readonly<z.infer<typeof dimensionSchema>>;

export const defaultDimension = (
  id: DimensionId,
  part: PartId,
  name: string,
  measure: Measure,
  order: number,
): Dimension => ({
  kind: 'dimension',
  id,
  part,
  name,
  measure,
  value: '',
  limits: '',
  source: 'drawn',
  finish: 'machined',
  sheet: '',
  note: '',
  order,
});
