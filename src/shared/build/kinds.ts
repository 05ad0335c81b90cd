import { z } from 'zod';
import { acceptanceSchema } from './acceptance.ts';
import { alloySchema } from './alloy.ts';
import { bodySchema } from './body.ts';
import { castingSchema } from './casting.ts';
import { dimensionSchema } from './dimension.ts';
import { machineSchema } from './machine.ts';
import { materialSchema } from './material.ts';
import { operationSchema } from './operation.ts';
import { partSchema } from './part.ts';
import { patternSchema } from './pattern.ts';
import { pourSchema } from './pour.ts';
import type { RecordKind } from './records.ts';
import { settingsSchema } from './settings.ts';
import { setupSchema } from './setup.ts';
import { solidSchema } from './solid.ts';
import { stationSchema } from './station.ts';

/**
 * Kinds in the order in which files list them: what is pointed at comes before what points at it. Set-ups and operations
 * point at each other.
 */
export const recordKinds = [
  'settings',
  'material',
  'alloy',
  'machine',
  'part',
  'station',
  'dimension',
  'solid',
  'body',
  'setup',
  'operation',
  'casting',
  'pattern',
  'pour',
  'acceptance',
] as const satisfies readonly RecordKind[];

/** The schema of each kind, by itself. */
export const schemaOf = {
  settings: settingsSchema,
  material: materialSchema,
  alloy: alloySchema,
  machine: machineSchema,
  part: partSchema,
  station: stationSchema,
  dimension: dimensionSchema,
  solid: solidSchema,
  body: bodySchema,
  setup: setupSchema,
  operation: operationSchema,
  casting: castingSchema,
  pattern: patternSchema,
  pour: pourSchema,
  acceptance: acceptanceSchema,
} as const satisfies Record<RecordKind, z.ZodType>;

/** Any record of a build. */
export const recordSchema = z.discriminatedUnion('kind', [
  settingsSchema,
  materialSchema,
  alloySchema,
  machineSchema,
  partSchema,
  stationSchema,
  dimensionSchema,
  solidSchema,
  bodySchema,
  setupSchema,
  operationSchema,
  castingSchema,
  patternSchema,
  pourSchema,
  acceptanceSchema,
]);
