import { z } from 'zod';
import { acceptanceSchema } from './acceptance.ts';
import { bodySchema } from './body.ts';
import { dimensionSchema } from './dimension.ts';
import { materialSchema } from './material.ts';
import { partSchema } from './part.ts';
import type { RecordKind } from './records.ts';
import { settingsSchema } from './settings.ts';
import { solidSchema } from './solid.ts';
import { stationSchema } from './station.ts';

/** Kinds in the order in which files list them: what is pointed at comes before what points at it. */
export const recordKinds = [
  'settings',
  'material',
  'part',
  'station',
  'dimension',
  'solid',
  'body',
  'acceptance',
] as const satisfies readonly RecordKind[];

/** The schema of each kind, by itself. */
export const schemaOf = {
  settings: settingsSchema,
  material: materialSchema,
  part: partSchema,
  station: stationSchema,
  dimension: dimensionSchema,
  solid: solidSchema,
  body: bodySchema,
  acceptance: acceptanceSchema,
} as const satisfies Record<RecordKind, z.ZodType>;

/** Any record of a build. */
export const recordSchema = z.discriminatedUnion('kind', [
  settingsSchema,
  materialSchema,
  partSchema,
  stationSchema,
  dimensionSchema,
  solidSchema,
  bodySchema,
  acceptanceSchema,
]);
