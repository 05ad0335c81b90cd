/**
 * Gives back `old` where `fresh` says the same, so that what did not change keeps its identity; where only a part differs,
 * `fresh` with its unchanged members taken from `old`. Plain values only: numbers, texts, lists and records of such.
 */
export function keepSame<T>(old: T, fresh: T): T {
  if (Object.is(old, fresh)) return old;
  if (typeof old !== 'object' || typeof fresh !== 'object' || old === null || fresh === null) return fresh;
  if (Array.isArray(old) !== Array.isArray(fresh)) return fresh;
  const keys = Object.keys(fresh) as (keyof T & string)[];
  let same = keys.length === Object.keys(old).length;
  const mendable = !Object.isFrozen(fresh);
  for (const key of keys) {
    const property = Object.getOwnPropertyDescriptor(fresh, key)!;
    if (property.get) {
      // A field that is worked out when read is left unread: the whole then counts as changed.
      same = false;
      continue;
    }
    const kept = key in old ? keepSame(old[key], fresh[key]) : fresh[key];
    if (!Object.is(kept, old[key]) || !(key in old)) same = false;
    if (mendable && !Object.is(kept, fresh[key])) fresh[key] = kept;
  }
  return same ? old : fresh;
}
