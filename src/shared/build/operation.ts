import { z } from 'zod';
import type { OperationId, PartId } from '../base/ids.ts';
import { amountSchema, placeSchema, writtenSchema } from './amount.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';

/** What an operation does, in the words of the trade. */
export const processes = [
  'face',
  'turn',
  'bore',
  'drill',
  'ream',
  'tap',
  'countersink',
  'counterbore',
  'mill',
  'shape',
  'plane',
  'grind',
  'scrape',
  'lap',
  'saw',
  'file',
] as const;
export type Process = (typeof processes)[number];

/** What the edge of a tool is made of. */
export const edges = ['HSS', 'carbide', 'carbon steel'] as const;
export type Edge = (typeof edges)[number];

/** A station or size made true, or a body that is there (or gone) from now on. */
const made = z.union([idSchema('station'), idSchema('dimension'), idSchema('body')]);

/** One step of a part's route; the route is its operations in list order. */
export const operationSchema = z.strictObject({
  kind: z.literal('operation'),
  id: idSchema('operation'),
  part: idSchema('part'),
  name: nameSchema,
  process: z.enum(processes),
  /** Where it is done; absent = at the bench, or not said yet. */
  setup: idSchema('setup').optional(),
  makes: z.array(made).max(100),
  /** Stations and sizes that must be true before: what it is located by, held by and measured from. */
  from: z.array(z.union([idSchema('station'), idSchema('dimension')])).max(30),
  /** Operations that must be done before, beyond what `from` asks. */
  after: z.array(idSchema('operation')).max(30),
  /** Stock left for a later operation, as written; empty = to size. */
  leaves: writtenSchema,
  /**
   * Where the edge travels: from and to along the set-up's line, at this diameter (the larger one, of a face or a taper).
   * Of flat work (mill, shape, plane, grind, scrape, saw, file) the diameter is the breadth of the surface across the line.
   */
  cut: z
    .strictObject({
      ends: z.tuple([placeSchema, placeSchema]),
      diameter: amountSchema,
      /** Smaller diameter of a face or a shoulder; nothing = to the centre. */
      inner: amountSchema,
    })
    .optional(),
  tool: z.strictObject({
    edge: z.enum(edges),
    /** Of a drill, reamer, tap, cutter, boring bar; of a turning tool the width of its shank. */
    diameter: amountSchema,
    /** Free length from what holds it. */
    overhang: writtenSchema,
    teeth: z.number().int().min(1).max(200),
    /** Approach angle κ of the edge in degrees. */
    angle: writtenSchema,
  }),
  /** As written where the user's own choice holds against the table: m/min or ft/min; rpm; mm per turn; mm. */
  chosen: z.strictObject({
    speed: writtenSchema,
    rpm: writtenSchema,
    feed: writtenSchema,
    depth: writtenSchema,
    /** Minutes for the whole operation, of handwork or from experience. */
    minutes: writtenSchema,
  }),
  note: noteSchema,
  order: orderSchema,
});
export type Operation = Readonly<z.infer<typeof operationSchema>>;

export const defaultOperation = (
  id: OperationId,
  part: PartId,
  name: string,
  process: Process,
  order: number,
): Operation => ({
  kind: 'operation',
  id,
  part,
  name,
  process,
  makes: [],
  from: [],
  after: [],
  leaves: '',
  tool: { edge: 'HSS', diameter: { written: '' }, overhang: '', teeth: 1, angle: '' },
  chosen: { speed: '', rpm: '', feed: '', depth: '', minutes: '' },
  note: '',
  order,
});
