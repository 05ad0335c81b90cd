import { z } from 'zod';
import { idSchema, nameSchema, noteSchema, orderSchema } from './fields.ts';
import { axes } from './station.ts';

const station = idSchema('station');
/** A size of the same part: diameter, radius, length, angle, thread or count. */
const size = idSchema('dimension');
const axis = z.enum(axes);
/** Two stations of the body's axis, in either order. */
const ends = z.tuple([station, station]);
/**
 * A point across the body's axis: one station of each of the two other axes, in the order of the alphabet
 * (along X: Y then Z; along Y: X then Z; along Z: X then Y).
 */
const across = z.tuple([station, station]);

const block = z.strictObject({
  type: z.literal('block'),
  x: ends,
  y: ends,
  z: ends,
});
/** With a bore it is a tube. */
const cylinder = z.strictObject({
  type: z.literal('cylinder'),
  axis,
  ends,
  centre: across,
  diameter: size,
  bore: size.optional(),
});
/** `diameters` at `ends[0]` and `ends[1]`; a missing second one is a point. */
const cone = z.strictObject({
  type: z.literal('cone'),
  axis,
  ends,
  centre: across,
  diameters: z.union([z.tuple([size]), z.tuple([size, size])]),
});
/** A polygon drawn across the axis, its corners being stations, each rounded where a radius is named. */
const prism = z.strictObject({
  type: z.literal('prism'),
  axis,
  ends,
  corners: z
    .array(z.strictObject({ at: across, radius: size.optional() }))
    .min(3)
    .max(500),
});
/** A closed outline of (place along the axis, diameter) turned about the axis; no diameter = on the axis. */
const revolved = z.strictObject({
  type: z.literal('revolved'),
  axis,
  centre: across,
  outline: z
    .array(z.strictObject({ at: station, diameter: size.optional() }))
    .min(3)
    .max(500),
});
/** Drilled from `from` to `to`; with thread, counterbore or countersink at `from`. Always takes away. */
const hole = z.strictObject({
  type: z.literal('hole'),
  axis,
  from: station,
  /** Bottom of the full diameter; the same axis. */
  to: station,
  centre: across,
  /** A diameter, or a thread (then its major diameter is shown and its tap drill is cut away). */
  diameter: size,
  counterbore: z.strictObject({ diameter: size, depth: size }).optional(),
  countersink: z.strictObject({ diameter: size, angle: size }).optional(),
  /** Included angle of the drill's point below `to`; absent = flat bottom or through. */
  point: size.optional(),
});
/** A round-ended slot from one centre to another, `width` across. Takes away (or adds, as a raised lug). */
const slot = z.strictObject({
  type: z.literal('slot'),
  axis,
  ends,
  centres: z.tuple([across, across]),
  width: size,
});
/** A block with its four corners along `axis` rounded by `radius`. */
const pocket = z.strictObject({
  type: z.literal('pocket'),
  axis,
  ends,
  from: across,
  to: across,
  radius: size.optional(),
});
/** A web of given thickness, half to each side of the station `at`, its outline drawn on the two other axes. */
const rib = z.strictObject({
  type: z.literal('rib'),
  axis,
  at: station,
  thickness: size,
  corners: z.array(across).min(3).max(50),
});
/** Fills (or rounds off) a straight corner along `axis` at `corner`; the quadrant says on which sides of it the arc lies. */
const fillet = z.strictObject({
  type: z.literal('fillet'),
  axis,
  ends,
  corner: across,
  radius: size,
  quadrant: z.tuple([z.union([z.literal(1), z.literal(-1)]), z.union([z.literal(1), z.literal(-1)])]),
});
/** A mesh brought in from outside: its own three axes turned to the part's (a proper turn in right angles), its origin put on three stations. */
const imported = z.strictObject({
  type: z.literal('imported'),
  solid: idSchema('solid'),
  origin: z.tuple([station, station, station]),
  /** Which signed axis of the part each axis of the file becomes, e.g. ['+X','+Y','+Z']. */
  turn: z.tuple([
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
    z.enum(['+X', '-X', '+Y', '-Y', '+Z', '-Z']),
  ]),
});

export const shapeSchema = z.discriminatedUnion('type', [
  block,
  cylinder,
  cone,
  prism,
  revolved,
  hole,
  slot,
  pocket,
  rib,
  fillet,
  imported,
]);
export type Shape = Readonly<z.infer<typeof shapeSchema>>;
export type ShapeType = Shape['type'];

/** Copies of the body: round a circle about an axis, or in a row. Several repeats multiply. */
export const repeatSchema = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('circle'),
    axis,
    centre: across,
    count: size,
    /** Bolt circle: the body is first moved outwards by half of it, along the first across axis. */
    circle: size.optional(),
    /** Angle of the first copy, from the first across axis towards the second. */
    start: size.optional(),
  }),
  z.strictObject({ type: z.literal('row'), axis, count: size, pitch: size }),
  /** Its mirror image about the station joins it. */
  z.strictObject({ type: z.literal('mirror'), axis, about: station }),
]);
export type Repeat = Readonly<z.infer<typeof repeatSchema>>;

/** Poured so, left open by a core, or cut afterwards. */
export const bodyFinishes = ['as cast', 'cored', 'machined'] as const;

/** A simple solid placed by stations and sizes. Bodies act in list order: each adds to, or takes from, what stands. */
export const bodySchema = z.strictObject({
  kind: z.literal('body'),
  id: idSchema('body'),
  part: idSchema('part'),
  name: nameSchema,
  adds: z.boolean(),
  finish: z.enum(bodyFinishes),
  shape: shapeSchema,
  repeats: z.array(repeatSchema).max(4),
  note: noteSchema,
  order: orderSchema,
});
export type Body = Readonly<z.infer<typeof bodySchema>>;
