import { existsSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import type { RecentFile } from '../../shared/ipc/contract.ts';
import { keepJson } from './kept-json.ts';

/** As many as a menu shows without scrolling on a small screen. */
export const MOST_RECENT = 12;

export interface RecentFiles {
  /** Newest first; files that are not there now are marked, not dropped: the stick may be in a drawer. */
  list(): readonly RecentFile[];
  has(file: string): boolean;
  /** Puts a file at the head of the list. */
  add(file: string): void;
  remove(file: string): void;
  clear(): void;
  settled(): Promise<void>;
}

/** Opens the list of recent builds, kept as `recent-files.json` in the program's data folder. */
export function openRecentFiles(
  dataFolder: string,
  onChange: () => void = () => {},
  onTrouble: (error: unknown) => void = () => {},
): RecentFiles {
  const kept = keepJson<readonly string[]>(
    path.join(dataFolder, 'recent-files.json'),
    z.array(z.string().min(1).max(4_096)).transform((files) => files.slice(0, MOST_RECENT)),
    [],
    onTrouble,
  );
  const set = (files: readonly string[]) => {
    kept.set(files.slice(0, MOST_RECENT));
    onChange();
  };
  const without = (file: string) => kept.get().filter((each) => each !== file);
  return {
    list: () => kept.get().map((file) => ({ path: file, missing: !existsSync(file) })),
    has: (file) => kept.get().includes(file),
    add: (file) => set([file, ...without(file)]),
    remove: (file) => set(without(file)),
    clear: () => set([]),
    settled: () => kept.settled(),
  };
}
