import { z } from 'zod';
import { acceptanceSchema } from './acceptance.ts';
import { bodySchema } from './body.ts';
import { dimensionSchema } from './dimension.ts';
import { machineSchema } from './machine.ts';
import { materialSchema } from './material.ts';
import { operationSchema } from './operation.ts';
import { partSchema } from './part.ts';
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
  'machine',
  'part',
  'station',
  'dimension',
  'solid',
  'body',
  'setup',
  'operation',
  'acceptance',
] as const satisfies readonly RecordKind[];

/** The schema of each kind, by itself. */
export const schemaOf = {
  settings: settingsSchema,
  material: materialSchema,
  machine: machineSchema,
  part: partSchema,
  station: stationSchema,
  dimension: dimensionSchema,
  solid: solidSchema,
  body: bodySchema,
  setup: setupSchema,
  operation: operationSchema,
  acceptance: acceptanceSchema,
} as const satisfies Record<RecordKind, z.ZodType>;

/** Any record of a build. */
export const recordSchema = z.discriminatedUnion('kind', [
  settingsSchema,
  materialSchema,
  machineSchema,
  partSchema,
  stationSchema,
  dimensionSchema,
  solidSchema,
  bodySchema,
  setupSchema,
  operationSchema,
  acceptanceSchema,
]);
