import type { AxisDrawing, PlacedStation } from './drawing.ts';

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

/** Whether two plain values (numbers, texts, lists and records of such) say the same. */
export function sameContent(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false;
    for (let i = 0; i < a.length; i++) if (!sameContent(a[i], b[i])) return false;
    return true;
  }
  const keys = Object.keys(a);
  if (Array.isArray(b) || keys.length !== Object.keys(b).length) return false;
  for (const key of keys) if (!(key in b) || !sameContent(a[key as never], b[key as never])) return false;
  return true;
}

function sameStation(a: PlacedStation, b: PlacedStation): boolean {
  if (a.id !== b.id || a.group !== b.group || !Object.is(a.at, b.at)) return false;
  const one = a.band;
  const two = b.band;
  if (!Object.is(one.minus, two.minus) || !Object.is(one.plus, two.plus)) return false;
  if (!Object.is(one.rss, two.rss) || !Object.is(one.rssCentre, two.rssCentre)) return false;
  // A path that is worked out when read is left unread: the station counts as changed.
  if (lazy.has(b) || a.path.length !== b.path.length) return false;
  for (let i = 0; i < a.path.length; i++) if (a.path[i] !== b.path[i]) return false;
  return true;
}

/** `fresh` with the members of `old` that say the same; `old` itself where all do. */
function keepList<T>(old: readonly T[], fresh: readonly T[], same: (a: T, b: T) => boolean): readonly T[] {
  let all = old.length === fresh.length;
  const kept = fresh.map((member, i) => {
    const before = old[i];
    if (before !== undefined && same(before, member)) return before;
    all = false;
    return member;
  });
  return all ? old : kept;
}

/** An axis with whatever did not change taken from what was handed out before; that itself where nothing did. */
export function keepAxis(old: AxisDrawing, fresh: AxisDrawing): AxisDrawing {
  const stations = keepList(old.stations, fresh.stations, sameStation);
  const groups = keepList(old.groups, fresh.groups, sameContent);
  const loops = keepList(old.loops, fresh.loops, sameContent);
  const conflicts = keepList(old.conflicts, fresh.conflicts, sameContent);
  const ties = keepList(old.ties, fresh.ties, sameContent);
  const same =
    stations === old.stations &&
    groups === old.groups &&
    loops === old.loops &&
    conflicts === old.conflicts &&
    ties === old.ties &&
    old.datum === fresh.datum;
  if (same) return old;
  return { part: fresh.part, axis: fresh.axis, datum: fresh.datum, stations, groups, loops, conflicts, ties };
}
