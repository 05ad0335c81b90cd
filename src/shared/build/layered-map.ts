/**
 * A map that lies over another: what was put or deleted since stands in a small map of its own, so that a change to a
 * large map need not copy it. Reads like the whole; its order is that of a `Map` to which the same was done.
 */
interface LayeredMap<K, V> extends ReadonlyMap<K, V> {
  /** The large map below; never itself layered. */
  readonly base: ReadonlyMap<K, V>;
  /** By key of the base: its new value, or undefined where it is deleted. */
  readonly changed: ReadonlyMap<K, V | undefined>;
  /** New keys, in the order in which they came; one that was deleted below and put back stands here too. */
  readonly added: ReadonlyMap<K, V>;
}

// A class, as one is made at every edit and a dozen closures for each would cost more than the edit.
class Layered<K, V> implements LayeredMap<K, V> {
  readonly base: ReadonlyMap<K, V>;
  readonly changed: ReadonlyMap<K, V | undefined>;
  readonly added: ReadonlyMap<K, V>;
  readonly size: number;

  constructor(base: ReadonlyMap<K, V>, changed: ReadonlyMap<K, V | undefined>, added: ReadonlyMap<K, V>) {
    this.base = base;
    this.changed = changed;
    this.added = added;
    let gone = 0;
    for (const value of changed.values()) if (value === undefined) gone++;
    this.size = base.size - gone + added.size;
  }

  get(key: K): V | undefined {
    const added = this.added.get(key);
    if (added !== undefined) return added;
    const changed = this.changed.get(key);
    return changed !== undefined || this.changed.has(key) ? changed : this.base.get(key);
  }

  has(key: K): boolean {
    return this.get(key) !== undefined;
  }

  *entries(): MapIterator<[K, V]> {
    const { changed } = this;
    for (const entry of this.base) {
      const value = changed.get(entry[0]);
      if (value !== undefined) yield [entry[0], value];
      else if (!changed.has(entry[0])) yield entry;
    }
    yield* this.added;
  }

  *keys(): MapIterator<K> {
    for (const [key] of this.entries()) yield key;
  }

  *values(): MapIterator<V> {
    for (const [, value] of this.entries()) yield value;
  }

  [Symbol.iterator](): MapIterator<[K, V]> {
    return this.entries();
  }

  forEach(each: (value: V, key: K, map: ReadonlyMap<K, V>) => void): void {
    for (const [key, value] of this.entries()) each(value, key, this);
  }
}

/** Changes to one map, from which a new one is made. */
interface LayerChanges<K, V> {
  has(key: K): boolean;
  put(key: K, value: V): void;
  delete(key: K): void;
  /** @returns the map with the changes; the one that they were begun over stays as it is. */
  done(): ReadonlyMap<K, V>;
}

/** Layers as large as this share of the whole are melted into one plain map again: the copy then pays for itself. */
const LARGEST_SHARE = 1 / 16;

/**
 * Begins changes over a map of values that are never undefined.
 * @param smallest maps of fewer entries are copied outright.
 */
export function changesOver<K, V>(over: ReadonlyMap<K, V>, smallest: number): LayerChanges<K, V> {
  if (over.size < smallest) return plainly(over);
  const base = over instanceof Layered ? (over as Layered<K, V>).base : over;
  const changed = new Map(over instanceof Layered ? (over as Layered<K, V>).changed : undefined);
  const added = new Map(over instanceof Layered ? (over as Layered<K, V>).added : undefined);
  return {
    has: (key) => added.has(key) || (changed.has(key) ? changed.get(key) !== undefined : base.has(key)),
    put(key, value) {
      const isOfBase = base.has(key) && !(changed.has(key) && changed.get(key) === undefined);
      if (isOfBase) changed.set(key, value);
      else added.set(key, value);
    },
    delete(key) {
      if (!added.delete(key)) changed.set(key, undefined);
    },
    done() {
      const layered = new Layered(base, changed, added);
      return changed.size + added.size > base.size * LARGEST_SHARE ? new Map(layered) : layered;
    },
  };
}

function plainly<K, V>(over: ReadonlyMap<K, V>): LayerChanges<K, V> {
  const next = new Map(over);
  return {
    has: (key) => next.has(key),
    put: (key, value) => void next.set(key, value),
    delete: (key) => void next.delete(key),
    done: () => next,
  };
}
