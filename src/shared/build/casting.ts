import { z } from 'zod';
import type { CastingId, PartId } from '../base/ids.ts';
import { allowanceGrades } from '../tables/casting.ts';
import { placeSchema, writtenSchema } from './amount.ts';
import { idSchema, nameSchema, noteSchema } from './fields.ts';
import { axes } from './station.ts';

/** How a casting is moulded. */
export const mouldings = [
  'foam in dry sand',
  'foam in rammed sand',
  'loose pattern in green sand',
  'split pattern in green sand',
  'core-made',
] as const;
export type Moulding = (typeof mouldings)[number];

export const directions = ['+X', '-X', '+Y', '-Y', '+Z', '-Z'] as const;
export type Direction = (typeof directions)[number];

/** A piece cast on to hold the casting by, and cut off later. */
const lugSchema = z.strictObject({
  name: nameSchema,
  axis: z.enum(axes),
  ends: z.tuple([placeSchema, placeSchema]),
  /** From and to along each of the two other axes, in the order of the alphabet. */
  across: z.tuple([z.tuple([placeSchema, placeSchema]), z.tuple([placeSchema, placeSchema])]),
});

/** How the pattern of one cast part is made: at most one per part. */
export const castingSchema = z.strictObject({
  kind: z.literal('casting'),
  id: idSchema('casting'),
  part: idSchema('part'),
  moulding: z.enum(mouldings),
  /** Percent along X, Y and Z as written; empty = measured on earlier castings, else the alloy's usual one. */
  contraction: z.tuple([writtenSchema, writtenSchema, writtenSchema]),
  /** Grade of required machining allowance, ISO 8062-3; empty = the starting grade of the process. */
  stockGrade: z.union([z.literal(''), z.enum(allowanceGrades)]),
  /** Stock in mm as written on single faces, by the machined station that it stands on. */
  stock: z.array(z.strictObject({ station: idSchema('station'), written: writtenSchema })).max(200),
  /** On single sizes, on each side: of a bore that gets more than the faces do. */
  sizeStock: z.array(z.strictObject({ size: idSchema('dimension'), written: writtenSchema })).max(200),
  /** Added to the stock of faces that look up; empty = the starting value. */
  copeExtra: writtenSchema,
  /** Which way of the part is up in the mould; absent = not said yet. */
  up: z.enum(directions).optional(),
  /** Where mould or pattern parts, along the up axis. */
  parting: placeSchema.optional(),
  /** Degrees; empty = the starting value of the process. */
  draft: writtenSchema,
  /** Holes under this diameter are cast solid; empty = the starting value. */
  closeUnder: writtenSchema,
  /** Thickness of the coating, one side; of a glue joint. */
  coating: writtenSchema,
  glueJoint: writtenSchema,
  /** Length of the print at each end of a cored body. */
  prints: z.array(z.strictObject({ body: idSchema('body'), ends: z.tuple([writtenSchema, writtenSchema]) })).max(60),
  lugs: z.array(lugSchema).max(40),
  /** Boards that the pattern is cut from, largest thickness tried first. */
  boards: z
    .array(
      z.strictObject({
        name: nameSchema,
        thickness: writtenSchema,
        length: writtenSchema,
        width: writtenSchema,
        count: z.number().int().min(0).max(1000),
      }),
    )
    .max(30),
  /** kg/m³, measured on an offcut; empty = not known. */
  foamDensity: writtenSchema,
  sectionAxis: z.enum(axes).optional(),
  bow: idSchema('machine').optional(),
  flask: idSchema('machine').optional(),
  note: noteSchema,
});
export type Casting = Readonly<z.infer<typeof castingSchema>>;

export const defaultCasting = (id: CastingId, part: PartId): Casting => ({
  kind: 'casting',
  id,
  part,
  moulding: 'foam in dry sand',
  contraction: ['', '', ''],
  stockGrade: '',
  stock: [],
  sizeStock: [],
  copeExtra: '',
  draft: '',
  closeUnder: '',
  coating: '',
  glueJoint: '',
  prints: [],
  lugs: [],
  boards: [],
  foamDensity: '',
  note: '',
});
