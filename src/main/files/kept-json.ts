import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { z } from 'zod';
import { writeAtomically } from './write-atomically.ts';

/** A small value of the program's own (preferences, recent files) that outlives the program in one JSON file. */
export interface Kept<T> {
  get(): T;
  /** Holds at once; the file follows in order. Never rejects: a failed write is told to `onTrouble`. */
  set(value: T): void;
  /** Resolves when all that was set is on disk, or its failure has been told. */
  settled(): Promise<void>;
}

/**
 * Opens a kept value. A file that is absent, damaged or of another shape counts as the fallback: losing a preference
 * must never keep a build from opening.
 */
export function keepJson<T>(
  file: string,
  schema: z.ZodType<T>,
  fallback: T,
  onTrouble: (error: unknown) => void = () => {},
): Kept<T> {
  let value = read();
  let writing = Promise.resolve();

  function read(): T {
    try {
      const parsed = schema.safeParse(JSON.parse(readFileSync(file, 'utf8')));
      return parsed.success ? parsed.data : fallback;
    } catch {
      return fallback;
    }
  }

  return {
    get: () => value,
    set(next) {
      value = next;
      const text = `${JSON.stringify(next, undefined, 2)}\n`;
      writing = writing.then(async () => {
        try {
          mkdirSync(path.dirname(file), { recursive: true });
          await writeAtomically(file, text);
        } catch (error) {
          onTrouble(error);
        }
      });
    },
    settled: () => writing,
  };
}
