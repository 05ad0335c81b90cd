import type { PartId } from '../../src/shared/base/ids.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';

/** What the editing programs do: numbered parts are added, undone and done again. */
export type Stroke = { readonly do: 'add'; readonly n: number } | { readonly do: 'undo' | 'redo' };

export const partNumbered = (n: number): Part => ({
  ...defaultPart(`part:e${n}` as PartId, `edit ${n}`, n),
  // Long enough that an edit takes more than one page of the log now and then.
  note: `edit ${n} `.repeat(n % 13 === 0 ? 900 : n % 40),
});

/** What a build holds after strokes that were all put on disk: the numbers of its parts, and the way back and forth. */
export interface Model {
  readonly revision: number;
  readonly past: readonly number[];
  readonly future: readonly number[];
}

export const emptyModel: Model = { revision: 0, past: [], future: [] };

export function follow({ revision, past, future }: Model, stroke: Stroke): Model {
  const next = revision + 1;
  switch (stroke.do) {
    case 'add':
      return { revision: next, past: [...past, stroke.n], future: [] };
    case 'undo':
      return { revision: next, past: past.slice(0, -1), future: [past.at(-1)!, ...future] };
    case 'redo':
      return { revision: next, past: [...past, future[0]!], future: future.slice(1) };
  }
}

/** Numbers from 0 up to 1, the same for the same seed (mulberry32, in the public domain). */
export function randomOf(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
