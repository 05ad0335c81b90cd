import { z } from 'zod';
import { idSchema } from '../../shared/build/fields.ts';
import { recordSchema } from '../../shared/build/kinds.ts';
import { machineSchema } from '../../shared/build/machine.ts';
import type { Channel, Request } from '../../shared/ipc/contract.ts';
import { MOST_KEPT_BYTES } from '../files/kept-views.ts';

/** More records than any one edit of a hand-built machine can touch, an import of a whole build included. */
const MOST_RECORDS = 500_000;
const records = z.array(recordSchema).max(MOST_RECORDS);

const diff = z.strictObject({
  added: records,
  updated: z.array(z.tuple([recordSchema, recordSchema])).max(MOST_RECORDS),
  removed: records,
});

/** Binary STL of ten million triangles: far more than a part drawn of bodies has. */
const MOST_SOLID_BYTES = 500_000_084;

const revision = z.number().int().min(0);
const nothing = z.undefined();
const absolutePath = z.string().min(1).max(4_096);
/** Labels carry part and dimension names of up to 120 characters each. */
const label = z.string().max(1_000);
const textKind = z.enum(['csv', 'json']);

/** What each channel takes. An extra field, a missing field or a field out of bounds is refused at the door. */
export const schemas: { readonly [C in Channel]: z.ZodType<Request<C>> } = {
  'build:load': nothing,
  'build:verify': nothing,
  'build:commit': z.strictObject({ revision, label, diff }),
  'build:step': z.strictObject({ revision, direction: z.enum(['undo', 'redo']) }),
  'views:wanted': nothing,
  'views:keep': z.strictObject({ views: z.string().max(MOST_KEPT_BYTES) }),
  'issue:list': nothing,
  'issue:make': z.strictObject({
    letter: z
      .string()
      .trim()
      .min(1)
      .max(8)
      .regex(/^[\p{L}\p{N}.-]+$/u, { message: 'letters, digits, points and hyphens' }),
    title: z.string().max(200),
    note: z.string().max(20_000),
  }),
  'files:recover': nothing,
  'files:new': nothing,
  'files:open': z.strictObject({ recent: z.union([absolutePath, z.undefined()]) }),
  'files:open-dropped': z.strictObject({ paths: z.array(absolutePath).min(1).max(20) }),
  'files:open-example': z.strictObject({ state: z.enum(['as-first-drawn', 'as-corrected']) }),
  'files:recent': nothing,
  'files:pick-text': z.strictObject({ kind: textKind }),
  'files:save-text': z.strictObject({
    kind: textKind,
    suggestedName: z.string().min(1).max(200),
    // V8's longest string is about 5e8 characters; a build of a million records stays well below this.
    text: z.string().max(200_000_000),
  }),
  'files:pick-solid': nothing,
  'files:save-solid': z.strictObject({
    kind: z.enum(['stl', '3mf']),
    suggestedName: z.string().min(1).max(200),
    bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.length <= MOST_SOLID_BYTES),
  }),
  'shop:load': nothing,
  'shop:put': z.strictObject({ machine: machineSchema, lengthUnit: z.enum(['mm', 'in']) }),
  'shop:remove': z.strictObject({ machine: idSchema('machine') }),
  'preferences:get': nothing,
  'preferences:set': z.strictObject({ theme: z.enum(['system', 'light', 'dark']) }),
  'window:state': z.strictObject({
    undo: z.union([label, z.undefined()]),
    redo: z.union([label, z.undefined()]),
    saving: z.boolean(),
    editingText: z.boolean(),
    hasBuild: z.boolean(),
    readOnly: z.boolean(),
  }),
};
