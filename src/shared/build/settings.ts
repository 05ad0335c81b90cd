import { z } from 'zod';
import type { SettingsId } from '../base/ids.ts';

/** What holds for the whole build. Exactly one in every build, with the fixed id {@link SETTINGS_ID}. */
export const settingsSchema = z.strictObject({
  kind: z.literal('settings'),
  id: z.literal('settings:build' as SettingsId),
  /** Name of the machine being built. */
  name: z.string().min(1).max(200),
  note: z.string().max(20_000),
  /** The unit of lengths written without one, and the system that computed lengths are shown in. */
  lengthUnit: z.enum(['mm', 'in']),
  /** ISO 2768-1 class for machined dimensions that carry no limits of their own. */
  machinedTolerance: z.enum(['f', 'm', 'c', 'v']),
  /** ISO 8062-3 dimensional casting tolerance grade (DCTG 1 to 16) for as-cast dimensions without limits of their own. */
  castingGrade: z.number().int().min(1).max(16),
});

export type Settings = Readonly<z.infer<typeof settingsSchema>>;

export const SETTINGS_ID = 'settings:build' as SettingsId;

/** Settings of a new build: hand-moulded light metal in dry sand reaches about DCTG 11 (ISO/CD 8062-2 table A.2). */
export const defaultSettings = (name: string): Settings => ({
  kind: 'settings',
  id: SETTINGS_ID,
  name,
  note: '',
  lengthUnit: 'mm',
  machinedTolerance: 'm',
  castingGrade: 11,
});
