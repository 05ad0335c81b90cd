import path from 'node:path';
import { z } from 'zod';
import type { Preferences } from '../../shared/ipc/contract.ts';
import { type Kept, keepJson } from '../files/kept-json.ts';

/** Tolerant on purpose: each field falls back by itself, so one unreadable entry costs only itself. */
const schema: z.ZodType<Preferences> = z.object({
  theme: z.enum(['system', 'light', 'dark']).catch('system'),
});

export const defaultPreferences: Preferences = { theme: 'system' };

/** Opens the user's preferences, kept as `preferences.json` in the program's data folder. */
export const openPreferences = (dataFolder: string, onTrouble: (error: unknown) => void): Kept<Preferences> =>
  keepJson(path.join(dataFolder, 'preferences.json'), schema, defaultPreferences, onTrouble);
