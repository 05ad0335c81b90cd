import { nameKey } from '../formula/name-key.ts';

/** Things that share a name (upper and lower case alike), in groups of two and more, in the order of their first. */
export function groupByName<T>(things: readonly T[], nameOf: (thing: T) => string): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const thing of things) {
    const key = nameKey(nameOf(thing));
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}
