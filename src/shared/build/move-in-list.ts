import type { BuildDiff } from './diff.ts';
import { draftOf } from './draft.ts';
import { placeInList } from './place-in-list.ts';
import type { Build, BuildRecord } from './records.ts';

type Listed = Extract<BuildRecord, { readonly order: number }>;

/**
 * Puts a record of a list before another of it, or at the end.
 * @param list the whole list, the record itself among it.
 * @returns undefined when `before` is not in the list.
 */
export function moveInList<R extends Listed>(
  build: Build,
  list: readonly R[],
  record: R,
  before: R['id'] | undefined,
): BuildDiff | undefined {
  if (before !== undefined && !list.some((other) => other.id === before)) return undefined;
  const draft = draftOf(build);
  if (record.id !== before) {
    const others = list.filter((other) => other.id !== record.id);
    const { orders, moved } = placeInList(others, before);
    for (const [, to] of moved) draft.put(to);
    draft.put({ ...record, order: orders[0]! });
  }
  return draft.diff();
}
