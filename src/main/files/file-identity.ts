import { stat } from 'node:fs/promises';

/**
 * Which file a path means now: device and number on it. An open file goes on under its number when its name is taken
 * away; edits would then be written where nobody finds them. Only asks for facts: opening and closing a database behind
 * SQLite's back would drop its locks.
 * @returns undefined when there is no file of that name, or its disk is gone.
 */
export async function identityOf(file: string): Promise<string | undefined> {
  try {
    const { dev, ino } = await stat(file, { bigint: true });
    return `${dev}:${ino}`;
  } catch {
    return undefined;
  }
}
