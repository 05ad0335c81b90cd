import { z } from 'zod';
import type { PourId } from '../base/ids.ts';
import { writtenSchema } from './amount.ts';
import { directions } from './casting.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';
import { momentSchema } from './pattern.ts';

/** A part that stays in the mould and is cast in: an arbor, a bush, a chill. */
export const insertSchema = z.strictObject({
  name: nameSchema,
  /** A part of the build, its mass taken from its solid. */
  part: idSchema('part').optional(),
  /** Used when no part is named, or the part has no solid. */
  mass: writtenSchema,
  /** By name; empty = the part's. */
  material: z.string().max(120),
  /** Temperature it has when the metal comes; empty = as cold as the shop. */
  preheat: writtenSchema,
  /** How much of its length lies in the metal; empty = the whole of it. */
  length: writtenSchema,
  /** The body of the casting whose metal flows round it; absent = not said yet. */
  around: idSchema('body').optional(),
  /** Cast in, or a chill that comes out again. */
  stays: z.boolean(),
});
export type Insert = Readonly<z.infer<typeof insertSchema>>;

const riserSchema = z.strictObject({
  name: nameSchema,
  /** The body that it stands on and feeds. */
  on: idSchema('body').optional(),
  diameter: writtenSchema,
  height: writtenSchema,
});

export const gateSpots = ['top', 'parting', 'bottom'] as const;

export const journalSchema = z.strictObject({
  pouredAt: momentSchema,
  temperature: writtenSchema,
  ambient: writtenSchema,
  insertTemperature: writtenSchema,
  charged: writtenSchema,
  left: writtenSchema,
  /** Minutes from lighting to pouring; seconds to fill. */
  meltMinutes: writtenSchema,
  fillSeconds: writtenSchema,
  weather: z.string().max(200),
  result: z.enum(['not judged', 'sound', 'usable', 'scrap']),
  /** Ids of the catalogue. */
  defects: z.array(z.string().max(60)).max(30),
  note: noteSchema,
  /** The one thing to change next time. */
  change: z.string().max(2_000),
});
export type PourJournal = Readonly<z.infer<typeof journalSchema>>;

/** A journal in which nothing stands yet but when it was. */
export const defaultJournal = (pouredAt: string): PourJournal => ({
  pouredAt,
  temperature: '',
  ambient: '',
  insertTemperature: '',
  charged: '',
  left: '',
  meltMinutes: '',
  fillSeconds: '',
  weather: '',
  result: 'not judged',
  defects: [],
  note: '',
  change: '',
});

/** One pouring, planned and then done: an attempt. */
export const pourSchema = z.strictObject({
  kind: z.literal('pour'),
  id: idSchema('pour'),
  name: nameSchema,
  castings: z
    .array(
      z.strictObject({
        part: idSchema('part'),
        count: z.number().int().min(1).max(100),
        /** Which way of the part is up; absent = as the casting says. */
        up: z.enum(directions).optional(),
        /** The pattern that is used up. */
        pattern: idSchema('pattern').optional(),
      }),
    )
    .max(30),
  /** By name; empty = the material of the first casting. */
  alloy: z.string().max(120),
  furnace: idSchema('machine').optional(),
  crucible: idSchema('machine').optional(),
  flask: idSchema('machine').optional(),
  /** Of the metal when it is poured; of the shop. */
  temperature: writtenSchema,
  ambient: writtenSchema,
  gating: z.strictObject({
    spot: z.enum(gateSpots),
    /** From the level in the cup to the gate. */
    sprueHeight: writtenSchema,
    /** Diameters of a round sprue; its foot is the choke. */
    sprueTop: writtenSchema,
    sprueFoot: writtenSchema,
    /** Areas as length × length are written out: width and height of runner and of each gate. */
    runnerWidth: writtenSchema,
    runnerHeight: writtenSchema,
    runnerLength: writtenSchema,
    gateWidth: writtenSchema,
    gateHeight: writtenSchema,
    gateLength: writtenSchema,
    gates: z.number().int().min(0).max(60),
    cupVolume: writtenSchema,
    /** A hollow sprue; else of foam. */
    hollow: z.boolean(),
  }),
  risers: z.array(riserSchema).max(40),
  inserts: z.array(insertSchema).max(40),
  /** Mass poured over; empty = the starting value. Percent lost; mass left in the crucible. */
  overflow: writtenSchema,
  loss: writtenSchema,
  heel: writtenSchema,
  /** Weights laid on the cope. */
  copeWeight: writtenSchema,
  /** Sand over the top of the pattern, and round it. */
  coverAbove: writtenSchema,
  coverAround: writtenSchema,
  sandDensity: writtenSchema,
  /** The attempt that this one starts from. */
  after: idSchema('pour').optional(),
  journal: journalSchema.optional(),
  note: noteSchema,
  order: orderSchema,
});
export type Pour = Readonly<z.infer<typeof pourSchema>>;

export const defaultPour = (id: PourId, name: string, order: number): Pour => ({
  kind: 'pour',
  id,
  name,
  castings: [],
  alloy: '',
  temperature: '',
  ambient: '',
  gating: {
    spot: 'top',
    sprueHeight: '',
    sprueTop: '',
    sprueFoot: '',
    runnerWidth: '',
    runnerHeight: '',
    runnerLength: '',
    gateWidth: '',
    gateHeight: '',
    gateLength: '',
    gates: 1,
    cupVolume: '',
    hollow: false,
  },
  risers: [],
  inserts: [],
  overflow: '',
  loss: '',
  heel: '',
  copeWeight: '',
  coverAbove: '',
  coverAround: '',
  sandDensity: '',
  note: '',
  order,
});
