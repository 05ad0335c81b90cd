import { z } from 'zod';
import type { PartId, SetupId } from '../base/ids.ts';
import { amountSchema, placeSchema, writtenSchema } from './amount.ts';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';
import { axes } from './station.ts';

const axis = z.enum(axes);
/** Two stations of the axes across the line, in the order of the alphabet. */
const across = z.tuple([idSchema('station'), idSchema('station')]);

/** How far the part has come when it is put into the machine. */
export const stateSchema = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('as cast') }),
  z.strictObject({ is: z.literal('finished') }),
  /** With the bodies that the part's operations up to and including this one have made. */
  z.strictObject({ is: z.literal('after'), operation: idSchema('operation') }),
]);
export type PartCondition = Readonly<z.infer<typeof stateSchema>>;

/** What is fixed to the work and goes round, or along, with it. */
export const fixtureKinds = [
  'arbor',
  'mandrel',
  'driving dog',
  'face plate',
  'angle plate',
  'balance weight',
  'lug',
  'packing',
  'other',
] as const;

/** A simple solid on places of the set-up's part, along the line. */
export const fixtureSchema = z.strictObject({
  name: nameSchema,
  what: z.enum(fixtureKinds),
  /** Along the line. */
  ends: z.tuple([placeSchema, placeSchema]),
  shape: z.discriminatedUnion('is', [
    /** Round, about the line itself. */
    z.strictObject({ is: z.literal('round'), diameter: amountSchema }),
    /** A block: from and to along each axis across the line, in the order of the alphabet, measured from the line. */
    z.strictObject({
      is: z.literal('block'),
      across: z.tuple([z.tuple([writtenSchema, writtenSchema]), z.tuple([writtenSchema, writtenSchema])]),
    }),
  ]),
  /** What it is made of, by name; empty = its mass must be written or stays unknown. */
  material: z.string().max(120),
  /** As written (`1.2 kg`); empty = from its material. */
  mass: writtenSchema,
});
export type Fixture = Readonly<z.infer<typeof fixtureSchema>>;

/** Another part that is held together with the first. */
const fellowSchema = z.strictObject({
  part: idSchema('part'),
  state: stateSchema,
  /** Which signed axis of the first part each axis of this one lies along, e.g. ['+X','+Y','+Z']: a proper turn. */
  turn: z.tuple([
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
  ]),
  /** Along X, Y and Z of the first part: its station, and the station of this part that lies there. */
  meets: z.tuple([across, across, across]),
});
export type Fellow = Readonly<z.infer<typeof fellowSchema>>;

/** Outside grips a boss from without; inside opens the jaws in a bore. */
const grip = {
  /** What the jaws close on: its two ends along the line, head end or tail end first. */
  ends: z.tuple([placeSchema, placeSchema]).optional(),
  /** Diameter that is gripped. */
  diameter: amountSchema,
  inside: z.boolean(),
  /** A centre in the tailstock steadies the far end. */
  tailCentre: z.boolean(),
};

export const holdingSchema = z.discriminatedUnion('as', [
  z.strictObject({ as: z.literal('between centres') }),
  z.strictObject({ as: z.literal('three-jaw chuck'), ...grip }),
  z.strictObject({ as: z.literal('four-jaw chuck'), ...grip }),
  /** The place that sits against the plate, and what the plate carries. */
  z.strictObject({ as: z.literal('face plate'), seat: placeSchema.optional(), tailCentre: z.boolean() }),
  /** Driven at the head by chuck or centre, carried at `at` by a fixed steady. */
  z.strictObject({ as: z.literal('steady'), at: placeSchema.optional(), diameter: amountSchema }),
  z.strictObject({ as: z.literal('vise'), ends: z.tuple([placeSchema, placeSchema]).optional(), depth: amountSchema }),
  z.strictObject({ as: z.literal('clamped to the table'), seat: placeSchema.optional() }),
]);
export type Holding = Readonly<z.infer<typeof holdingSchema>>;
export type HoldingWay = Holding['as'];

/** A part in a named state, held on one machine in one way, turning about or moving along a stated line. */
export const setupSchema = z.strictObject({
  kind: z.literal('setup'),
  id: idSchema('setup'),
  /** The part that is worked upon; places and lines are its stations. */
  part: idSchema('part'),
  name: nameSchema,
  machine: idSchema('machine').optional(),
  state: stateSchema,
  /** Stock on the surfaces still to be machined, as written; empty = the bodies as they are drawn. */
  allowance: writtenSchema,
  fellows: z.array(fellowSchema).max(20),
  fixtures: z.array(fixtureSchema).max(40),
  /**
   * The line that the work turns about, or that work or tool moves along: the axis, and the stations across it. Without
   * stations it is not said yet. On a drill press it is the spindle; on shaper, planer and mill the stroke or long travel.
   */
  line: z.strictObject({ axis, through: across.optional() }),
  /** Which end of the axis is to the headstock (on a drill press to the spindle, on a shaper to the column). */
  headEnd: z.enum(['low', 'high']),
  holding: holdingSchema,
  /** Minutes to set it up, as written; empty = what is usual for the way of holding. */
  minutes: writtenSchema,
  note: noteSchema,
  order: orderSchema,
});
export type Setup = Readonly<z.infer<typeof setupSchema>>;

export const defaultSetup = (id: SetupId, part: PartId, name: string, order: number): Setup => ({
  kind: 'setup',
  id,
  part,
  name,
  state: { is: 'as cast' },
  allowance: '',
  fellows: [],
  fixtures: [],
  line: { axis: 'X' },
  headEnd: 'low',
  holding: { as: 'between centres' },
  minutes: '',
  note: '',
  order,
});
