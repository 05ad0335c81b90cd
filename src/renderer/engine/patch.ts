/**
 * The difference between two view models, small enough to send after every keystroke. Models are plain data (objects,
 * arrays, strings, numbers, booleans, undefined). Parts with the same identity are taken as equal without looking inside.
 */
export type Patch =
  | { readonly op: 'set'; readonly value: unknown }
  /** Keys of an object: changed ones, and those that are gone. */
  | {
      readonly op: 'keys';
      readonly change: readonly (readonly [key: string, patch: Patch])[];
      readonly gone: readonly string[];
    }
  /** Items of an array of the same length, by index. */
  | { readonly op: 'items'; readonly change: readonly (readonly [index: number, patch: Patch])[] }
  /** A run of an array replaced by another. */
  | { readonly op: 'splice'; readonly start: number; readonly remove: number; readonly insert: readonly unknown[] }
  /** An array put together anew: runs of the old one, and items that were not in it. */
  | { readonly op: 'weave'; readonly pieces: readonly Piece[] };

type Piece = readonly [from: number, count: number] | { readonly insert: readonly unknown[] };

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** @returns undefined when nothing changed. */
export function makePatch(before: unknown, after: unknown): Patch | undefined {
  if (Object.is(before, after)) return undefined;
  if (Array.isArray(before) && Array.isArray(after)) return patchArray(before, after);
  if (isPlain(before) && isPlain(after)) return patchObject(before, after);
  return { op: 'set', value: after };
}

function patchObject(before: Plain, after: Plain): Patch | undefined {
  const change: [string, Patch][] = [];
  for (const key of Object.keys(after)) {
    // A field that is undefined is as good as absent.
    const patch = makePatch(Object.hasOwn(before, key) ? before[key] : undefined, after[key]);
    if (patch !== undefined) change.push([key, patch]);
  }
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(after, key));
  return change.length + gone.length === 0 ? undefined : { op: 'keys', change, gone };
}

function patchArray(before: readonly unknown[], after: readonly unknown[]): Patch | undefined {
  const moved = findMoved(before, after);
  if (moved !== undefined) return weave(moved, after);
  if (before.length === after.length) {
    const change: [number, Patch][] = [];
    for (let i = 0; i < after.length; i++) {
      const patch = makePatch(before[i], after[i]);
      if (patch !== undefined) change.push([i, patch]);
    }
    return change.length === 0 ? undefined : { op: 'items', change };
  }
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && makePatch(before[start], after[start]) === undefined) start++;
  let end = 0;
  while (
    end < shorter - start &&
    makePatch(before[before.length - 1 - end], after[after.length - 1 - end]) === undefined
  )
    end++;
  return { op: 'splice', start, remove: before.length - start - end, insert: after.slice(start, after.length - end) };
}

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/**
 * Where the items of the old array were, when some of them now stand elsewhere among the others: one came and another
 * went, so that all between them shifted. Told item by item, that would be all of them.
 * @returns undefined when nothing moved, or all that did moved by the same run (a splice tells that shorter).
 */
function findMoved(before: readonly unknown[], after: readonly unknown[]): ReadonlyMap<object, number> | undefined {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && Object.is(before[start], after[start])) start++;
  let end = 0;
  while (end < shorter - start && Object.is(before[before.length - 1 - end], after[after.length - 1 - end])) end++;
  const places = new Map<object, number>();
  for (let i = start; i < before.length - end; i++) {
    const item = before[i];
    if (isObject(item)) places.set(item, i);
  }
  if (places.size === 0) return undefined;
  let moved = false;
  for (let i = start; i < after.length - end && !moved; i++) {
    const item = after[i];
    // Between lists of different lengths a splice would send anew even what stands where it stood.
    moved = isObject(item) && places.has(item) && (before.length !== after.length || places.get(item) !== i);
  }
  if (!moved) return undefined;
  for (const [i, item] of before.entries()) if (isObject(item)) places.set(item, i);
  return places;
}

function weave(places: ReadonlyMap<object, number>, after: readonly unknown[]): Patch {
  const pieces: ([from: number, count: number] | { readonly insert: unknown[] })[] = [];
  for (const item of after) {
    const from = isObject(item) ? places.get(item) : undefined;
    const last = pieces.at(-1);
    if (from === undefined) {
      if (last !== undefined && 'insert' in last) last.insert.push(item);
      else pieces.push({ insert: [item] });
    } else if (Array.isArray(last) && last[0] + last[1] === from) last[1]++;
    else pieces.push([from, 1]);
  }
  return { op: 'weave', pieces };
}

/** @returns the model after the patch; whatever the patch does not touch keeps its identity. */
export function applyPatch(before: unknown, patch: Patch): unknown {
  switch (patch.op) {
    case 'set':
      return patch.value;
    case 'keys': {
      const next: Record<string, unknown> = { ...(before as Plain) };
      for (const key of patch.gone) delete next[key];
      for (const [key, inner] of patch.change) next[key] = applyPatch(next[key], inner);
      return next;
    }
    case 'items': {
      const next = [...(before as readonly unknown[])];
      for (const [index, inner] of patch.change) next[index] = applyPatch(next[index], inner);
      return next;
    }
    case 'weave': {
      const old = before as readonly unknown[];
      return patch.pieces.flatMap((piece) =>
        'insert' in piece ? piece.insert : old.slice(piece[0], piece[0] + piece[1]),
      );
    }
    case 'splice':
      return (before as readonly unknown[]).toSpliced(patch.start, patch.remove, ...patch.insert);
  }
}
