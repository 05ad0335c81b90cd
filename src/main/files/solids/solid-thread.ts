import { parentPort, workerData } from 'node:worker_threads';
import { readSolid } from './read-solid.ts';

/** What the thread is started with. */
export interface SolidOrder {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

// One thread, one file: it may be ended at any moment, and its memory goes with it.
const { fileName, bytes } = workerData as SolidOrder;
const result = await readSolid(fileName, bytes);
parentPort?.postMessage(result);
