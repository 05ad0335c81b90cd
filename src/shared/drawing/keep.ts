const lazy = new WeakSet<object>();

/** Adds a field that is worked out when first read. It is an own, enumerable field like any other. */
export function later<T extends object, K extends string, V>(to: T, name: K, make: () => V): T & Record<K, V> {
  let made: V | undefined;
  const get = (): V => {
    made ??= make();
    return made;
  };
  lazy.add(to);
  return Object.defineProperty(to, name, { enumerable: true, configurable: false, get }) as T & Record<K, V>;
}

/**
 * Gives back `old` where `fresh` says the same, so that what did not change keeps its identity; where only a part differs,
 * `fresh` with its unchanged members taken from `old`. Plain values only: numbers, texts, lists and records of such.
 */
export function keepSame<T>(old: T, fresh: T): T {
  if (Object.is(old, fresh)) return old;
  if (typeof old !== 'object' || typeof fresh !== 'object' || old === null || fresh === null) return fresh;
  // What is worked out when read is left unread: it counts as changed.
  if (lazy.has(fresh)) return fresh;
  if (Array.isArray(old) !== Array.isArray(fresh)) return fresh;
  const keys = Object.keys(fresh) as (keyof T & string)[];
  let same = keys.length === Object.keys(old).length;
  const mendable = !Object.isFrozen(fresh);
  for (const key of keys) {
    const kept = key in old ? keepSame(old[key], fresh[key]) : fresh[key];
    if (!Object.is(kept, old[key]) || !(key in old)) same = false;
    if (mendable && !Object.is(kept, fresh[key])) fresh[key] = kept;
  }
  return same ? old : fresh;
}
