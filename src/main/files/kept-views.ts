import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { utimes } from 'node:fs/promises';
import path from 'node:path';
import { writeAtomically } from './write-atomically.ts';

/** Builds whose first views are kept: rather more than the list of recent files shows. */
export const MOST_KEPT = 20;
/** More than this would be slower to fetch than to work out. */
export const MOST_KEPT_BYTES = 4_194_304;

/**
 * What the window showed first of a build, kept from one opening to the next. It is named by what it was worked out
 * from, the records and the engine, and so it is never stale: another record or another engine, and it is not found.
 */
export interface KeptViews {
  /** @param records the records of a build, as the window receives them */
  keyOf(records: string): string;
  has(key: string): boolean;
  /** @returns undefined when there is none, or it is damaged; what is damaged is removed. */
  find(key: string): string | undefined;
  /** Never rejects: a failed write is told to `onTrouble`, and the next opening works the views out. */
  keep(key: string, views: string): void;
  clear(): void;
  settled(): Promise<void>;
}

const NAME = /^[0-9a-f]{64}\.json$/;
/** What a power cut left of writing one. */
const REMNANT = /^\.[0-9a-f]{64}\.json\.[0-9a-f]+\.part$/;

const digest = (...texts: readonly string[]): string => {
  const hash = createHash('sha256');
  for (const text of texts) hash.update(text, 'utf8');
  return hash.digest('hex');
};
/** The first line of a file: that it is one, and the digest of all that follows. */
const headOf = (views: string): string => `waywright views 1 ${digest(views)}`;

/**
 * Opens the kept views: one file for each build in `kept-views` of the program's data folder.
 * @param engine tells one engine from another: whatever is worked out may differ between two of them. Asked once, late.
 */
export function openKeptViews(
  dataFolder: string,
  engine: () => string,
  onTrouble: (error: unknown) => void = () => {},
): KeptViews {
  const folder = path.join(dataFolder, 'kept-views');
  const fileOf = (key: string): string => path.join(folder, `${key}.json`);
  let fingerprint: string | undefined;
  let working = Promise.resolve();

  const later = (work: () => Promise<void> | void): void => {
    working = working.then(work).catch(onTrouble);
  };
  const remove = (name: string): void => rmSync(path.join(folder, name), { force: true });
  /** Lets go of those that were not asked for longest. */
  const prune = (): void => {
    const names = readdirSync(folder);
    for (const name of names) if (REMNANT.test(name)) remove(name);
    const byUse = names
      .filter((name) => NAME.test(name))
      .map((name) => ({ name, usedAt: statSync(path.join(folder, name)).mtimeMs }))
      .sort((a, b) => b.usedAt - a.usedAt);
    for (const { name } of byUse.slice(MOST_KEPT)) remove(name);
  };

  return {
    keyOf(records) {
      fingerprint ??= digest(engine());
      return digest(fingerprint, '\n', records);
    },
    has: (key) => existsSync(fileOf(key)),
    find(key) {
      const file = fileOf(key);
      let text: string;
      try {
        text = readFileSync(file, 'utf8');
      } catch {
        return undefined;
      }
      const end = text.indexOf('\n');
      const views = text.slice(end + 1);
      if (end < 0 || text.slice(0, end) !== headOf(views)) {
        later(() => rmSync(file, { force: true }));
        return undefined;
      }
      const now = new Date();
      later(() => utimes(file, now, now));
      return views;
    },
    keep(key, views) {
      if (Buffer.byteLength(views) > MOST_KEPT_BYTES) return;
      later(async () => {
        mkdirSync(folder, { recursive: true });
        await writeAtomically(fileOf(key), `${headOf(views)}\n${views}`);
        prune();
      });
    },
    clear: () =>
      later(() => {
        if (!existsSync(folder)) return;
        for (const name of readdirSync(folder)) if (NAME.test(name) || REMNANT.test(name)) remove(name);
      }),
    settled: () => working,
  };
}
