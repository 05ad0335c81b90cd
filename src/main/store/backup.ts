import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { messageOf } from './failures.ts';
import { syncFile } from './new-file.ts';
import { vacuumInto } from './private-copy.ts';

/** Why there is no copy, in words. */
export interface BackupError {
  readonly detail: string;
}

/** Copies kept of each build file. */
const KEPT = 10;

/**
 * Copies a build into a folder and deletes the oldest copies beyond the last ten of this file. Runs on a connection of
 * its own, so that edits go on meanwhile.
 * @param source the file to copy from; `file`, by whose name and place copies are told apart, unless it is held.
 * @param at the present moment, ISO 8601, UTC.
 * @returns the path of the copy, or in words why there is none; it never throws.
 */
export async function backUpFile(
  file: string,
  folder: string,
  at: string,
  source = file,
): Promise<Result<string, BackupError>> {
  const beside = path.join(folder, `.${randomBytes(6).toString('hex')}.part`);
  try {
    await mkdir(folder, { recursive: true });
    await vacuumInto(source, beside);
    await syncFile(beside);
    const copy = path.join(folder, await freeName(folder, prefixOf(file) + at.replace(/[:.]/g, '-')));
    await rename(beside, copy);
    await dropOldest(file, folder);
    return ok(copy);
  } catch (error) {
    return err({ detail: messageOf(error) });
  } finally {
    await rm(beside, { force: true }).catch(() => undefined);
  }
}

/** Copies of one file, oldest first: their names carry the moment, so the order of names is the order of time. */
export async function listBackups(file: string, folder: string): Promise<readonly string[]> {
  const names = await readdir(folder).catch(() => []);
  return names
    .filter((name) => name.startsWith(prefixOf(file)) && name.endsWith('.wayw'))
    .sort()
    .map((name) => path.join(folder, name));
}

async function dropOldest(file: string, folder: string): Promise<void> {
  const copies = await listBackups(file, folder);
  for (const copy of copies.slice(0, -KEPT)) await rm(copy, { force: true });
}

/** Two builds of the same name in different folders must not push out each other's copies. */
function prefixOf(file: string): string {
  const place = createHash('sha256').update(path.resolve(file)).digest('hex').slice(0, 8);
  return `${path.parse(file).name} ${place} `;
}

/** Two copies within one millisecond do not overwrite each other. */
async function freeName(folder: string, wanted: string): Promise<string> {
  const names = new Set(await readdir(folder));
  let name = `${wanted}.wayw`;
  for (let n = 1; names.has(name); n++) name = `${wanted} ${String(n).padStart(3, '0')}.wayw`;
  return name;
}
