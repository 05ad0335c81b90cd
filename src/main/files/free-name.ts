import { existsSync } from 'node:fs';
import path from 'node:path';

/**
 * @param name without ending
 * @param ending with its point
 * @returns the first of `name.ending`, `name 2.ending`, `name 3.ending` … that no file in the folder has
 */
export function freeName(
  folder: string,
  name: string,
  ending: string,
  taken: (file: string) => boolean = existsSync,
): string {
  for (let n = 1; ; n++) {
    const file = path.join(folder, `${n === 1 ? name : `${name} ${n}`}${ending}`);
    if (!taken(file)) return file;
  }
}
