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

/** The name of what comes after: `arm` → `arm 2`, `arm 2` → `arm 3`, or the next that is not taken, upper and lower case alike. */
export function nextName(name: string, taken: Iterable<string>): string {
  const names = new Set([...taken].map(nameKey));
  const [, stem = name, count = '1'] = /^(.*\S)\s+([1-9]\d{0,3})$/.exec(name) ?? [];
  for (let n = Number(count) + 1; ; n++) {
    // Names end at 120 characters; the number must find room.
    const next = `${stem.slice(0, 110).trim()} ${n}`;
    if (!names.has(nameKey(next))) return next;
  }
}

/** The list with a name for each that has none: `lug`, `lug 2`, … */
export function withNames<T extends { readonly name: string }>(list: readonly T[], stem: string): T[] {
  const taken = list.map(({ name }) => name.trim());
  return list.map((item) => {
    const name = item.name.trim() || freeName(stem, taken);
    taken.push(name);
    return { ...item, name };
  });
}

/** `3 dimensions`, `1 dimension`. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
