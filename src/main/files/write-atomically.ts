import { randomBytes } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import path from 'node:path';

/**
 * Writes a whole file so that a reader, or a power cut, meets either the old content or the new, never a part of it.
 * @throws the file system's error (`ENOSPC`, `EACCES` …); the old file is then as it was.
 */
export async function writeAtomically(file: string, content: string | Uint8Array): Promise<void> {
  // Beside the target: a rename across file systems would be a copy.
  const beside = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const handle = await open(beside, 'wx');
    try {
      await handle.writeFile(content, 'utf8');
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
