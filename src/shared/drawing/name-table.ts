import { addTo, createRows, type Rows, takeFrom, widenRows } from './rows.ts';

/** Who bears a name, in place of a slot. */
export const NOBODY = -1;
export const SEVERAL = -2;

/** In place of the part that a dimension's name belongs to: the names of the parts themselves. */
export const OF_PARTS = -1;

/**
 * All names of a build in one table: those of parts, and those of each part's dimensions. A name is an entry, a small
 * integer that it keeps; the columns tell who bears it and which formulas say it. A map for every part would be a third
 * of the memory of a large build.
 */
export interface NameTable {
  count: number;
  /** Entries by hash, one higher than they are; 0 where it is free. Open addressing, at most half full. */
  places: Int32Array<ArrayBuffer>;
  /** As `nameKey` makes them. */
  readonly keys: (string | undefined)[];
  /** Slot of the part whose dimension the name is of, or `OF_PARTS`. */
  owner: Int32Array<ArrayBuffer>;
  /** The entry that the same part had last before this one, or -1. */
  before: Int32Array<ArrayBuffer>;
  /** Slot of the only bearer, or `NOBODY`, or `SEVERAL`: then they stand in `bearers`. */
  bearer: Int32Array<ArrayBuffer>;
  readonly bearers: Map<number, number[]>;
  /** Slots of the dimensions whose formulas say the name. */
  readonly mentions: Rows;
}

/** @param count how many names to make room for at once. */
export function createNameTable(count: number): NameTable {
  let size = 64;
  while (size < count * 2) size *= 2;
  const room = size / 2;
  return {
    count: 0,
    places: new Int32Array(size),
    keys: new Array<string | undefined>(room).fill(undefined),
    owner: new Int32Array(room),
    before: new Int32Array(room),
    bearer: new Int32Array(room),
    bearers: new Map(),
    mentions: createRows(room, count),
  };
}

// FNV-1a (Fowler, Noll, Vo; the 32-bit constants of RFC 9923), begun with the owner, and a last mixing.
function hashOf(owner: number, key: string): number {
  let hash = Math.imul(0x811c9dc5 ^ owner, 0x01000193);
  hash ^= hash >>> 13;
  for (let i = 0; i < key.length; i++) hash = Math.imul(hash ^ key.charCodeAt(i), 0x01000193);
  return hash ^ (hash >>> 15);
}

function placeOf(names: NameTable, owner: number, key: string): number {
  const { places, keys } = names;
  const last = places.length - 1;
  let place = hashOf(owner, key) & last;
  for (;;) {
    const entry = places[place]! - 1;
    if (entry < 0 || (names.owner[entry] === owner && keys[entry] === key)) return place;
    place = (place + 1) & last;
  }
}

/** The entry of a name, made when it is new. @param last the owner's newest entry, or -1: a new one is chained to it. */
export function entryOf(names: NameTable, owner: number, key: string, last: number): number {
  const place = placeOf(names, owner, key);
  const known = names.places[place]! - 1;
  if (known >= 0) return known;
  const entry = names.count++;
  if (entry === names.owner.length) {
    widen(names);
    names.places[placeOf(names, owner, key)] = entry + 1;
  } else {
    names.places[place] = entry + 1;
  }
  names.keys[entry] = key;
  names.owner[entry] = owner;
  names.before[entry] = last;
  names.bearer[entry] = NOBODY;
  return entry;
}

function longer(column: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const made = new Int32Array(length);
  made.set(column);
  return made;
}

function widen(names: NameTable): void {
  const old = names.owner.length;
  const room = old * 2;
  names.owner = longer(names.owner, room);
  names.before = longer(names.before, room);
  names.bearer = longer(names.bearer, room);
  widenRows(names.mentions, room);
  while (names.keys.length < room) names.keys.push(undefined);
  names.places = new Int32Array(room * 2);
  for (let entry = 0; entry < old; entry++) {
    names.places[placeOf(names, names.owner[entry]!, names.keys[entry]!)] = entry + 1;
  }
}

export function addBearer(names: NameTable, entry: number, slot: number): void {
  const bearer = names.bearer[entry]!;
  if (bearer === NOBODY) {
    names.bearer[entry] = slot;
  } else if (bearer === SEVERAL) {
    names.bearers.get(entry)!.push(slot);
  } else {
    names.bearers.set(entry, [bearer, slot]);
    names.bearer[entry] = SEVERAL;
  }
}

export function dropBearer(names: NameTable, entry: number, slot: number): void {
  if (names.bearer[entry] === slot) {
    names.bearer[entry] = NOBODY;
    return;
  }
  const left = names.bearers.get(entry)?.filter((other) => other !== slot);
  if (!left) return;
  if (left.length === 1) {
    names.bearer[entry] = left[0]!;
    names.bearers.delete(entry);
  } else {
    names.bearers.set(entry, left);
  }
}

/** Everyone who bears a name. */
export function bearersOf(names: NameTable, entry: number): readonly number[] {
  const bearer = names.bearer[entry]!;
  return bearer >= 0 ? [bearer] : (names.bearers.get(entry) ?? []);
}

export const addMention = (names: NameTable, entry: number, slot: number): void => addTo(names.mentions, entry, slot);

export const dropMention = (names: NameTable, entry: number, slot: number): void =>
  takeFrom(names.mentions, entry, slot);
