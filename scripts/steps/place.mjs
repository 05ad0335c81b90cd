import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Where things are kept that `npm ci` must not wipe. Override with WAYWRIGHT_CACHE. */
export const cacheFolder =
  process.env.WAYWRIGHT_CACHE ??
  path.join(process.env.XDG_CACHE_HOME ?? path.join(os.homedir(), '.cache'), 'waywright-development');

/** @param {...string} parts */
export const inRoot = (...parts) => path.join(root, ...parts);
