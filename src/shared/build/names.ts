import { nameKey } from '../formula/name-key.ts';

/** The first of `stem`, `stem 2`, `stem 3`, … that is not taken, upper and lower case alike. */
export function freeName(stem: string, taken: Iterable<string>): string {
  const names = new Set([...taken].map(nameKey));
  if (!names.has(nameKey(stem))) return stem;
  for (let n = 2; ; n++) {
    const name = `${stem} ${n}`;
    if (!names.has(nameKey(name))) return name;
  }
}

/** `3 dimensions`, `1 dimension`. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
