import { open } from 'node:fs/promises';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { err, type Result } from '../../../shared/base/result.ts';
import { LARGEST_FILE_BYTES, refuse, type SolidProblem } from '../../../shared/solid/formats/mesh-file.ts';
import { troubleInWords } from '../disk-trouble.ts';
import { type FileSolid, tooLargeFile } from './read-solid.ts';
import type { SolidOrder } from './solid-thread.ts';

/** Ten times what a file of the largest size takes on an old machine. */
const LONGEST_MS = 5 * 60_000;
const MOST_MEMORY_MB = 3_000;

/**
 * Reads a file of a solid in a thread of its own: the window stays alive meanwhile, and a file that was made to take for
 * ever, or all memory, takes only the thread with it.
 * @param longestMs after which the reading is given up
 * @param thread the script of the thread; beside the bundle that this runs in, as both bundles put it there
 */
export async function readSolidApart(
  file: string,
  longestMs = LONGEST_MS,
  thread = path.join(import.meta.dirname, 'solid-thread.js'),
): Promise<Result<FileSolid, SolidProblem>> {
  const read = await readBytes(file);
  if (!read.ok) return read;
  const order: SolidOrder = { fileName: path.basename(file), bytes: read.value };
  const worker = new Worker(thread, {
    workerData: order,
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB },
  });
  return new Promise((resolve) => {
    const finish = (result: Result<FileSolid, SolidProblem>): void => {
      clearTimeout(clock);
      void worker.terminate();
      resolve(result);
    };
    const clock = setTimeout(() => finish(tooLong(longestMs)), longestMs);
    worker.once('message', finish);
    // An error of ours comes here too; the file cannot be taken either way, and the words say which it was.
    worker.once('error', (error) => finish(tooMuch(error)));
    worker.once('exit', () => finish(tooMuch(new Error('it ended without an answer'))));
  });
}

async function readBytes(file: string): Promise<Result<Uint8Array, SolidProblem>> {
  try {
    const handle = await open(file, 'r');
    try {
      const { size } = await handle.stat();
      if (size > LARGEST_FILE_BYTES) return tooLargeFile(size);
      return { ok: true, value: new Uint8Array(await handle.readFile()) };
    } finally {
      await handle.close();
    }
  } catch (error) {
    const reason = troubleInWords(error);
    return refuse('unreadable', '', `The file cannot be read: ${reason}.`, 'Check the name, and that you may read it.');
  }
}

const tooLong = (longestMs: number) =>
  refuse(
    'took-too-long',
    '',
    `Reading was given up after ${Math.round(longestMs / 1000)} seconds.`,
    'Write the part again as triangles (STL or 3MF), or with fewer of its details.',
  );

const tooMuch = (error: Error) =>
  err<SolidProblem>({
    code: 'too-large',
    place: '',
    sentence: `The file could not be worked through (${error.message}).`,
    remedy: 'Write the part again from the program that it came from, with a coarser setting.',
  });
