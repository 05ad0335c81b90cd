import { realpath } from 'node:fs/promises';
import path from 'node:path';

/** @returns the path with links resolved (and, where the system knows, in its true letters); as given when not there. */
export const realFile = (file: string): Promise<string> => realpath(file).catch(() => path.resolve(file));
