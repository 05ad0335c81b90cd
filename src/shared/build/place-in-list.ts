import { inListOrder } from './look-up.ts';

interface Listed {
  readonly id: string;
  readonly order: number;
}

export interface Placing<R extends Listed> {
  /** The order numbers of the new places, ascending. */
  readonly orders: readonly number[];
  /** Records that had to be renumbered, because no number was left between two neighbours. */
  readonly moved: readonly (readonly [from: R, to: R])[];
}

/**
 * Finds room for `count` records before the one called `before`, or at the end when it is undefined or not in the list.
 * Neighbours stay as they are unless their numbers leave no room between them; then the whole list is renumbered.
 */
export function placeInList<R extends Listed>(list: readonly R[], before: string | undefined, count = 1): Placing<R> {
  const sorted = [...list].sort(inListOrder);
  const found = before === undefined ? -1 : sorted.findIndex((record) => record.id === before);
  const index = found < 0 ? sorted.length : found;
  const below = sorted[index - 1];
  const above = sorted[index];
  if (!above) {
    const start = below ? Math.floor(below.order) + 1 : 1;
    return { orders: Array.from({ length: count }, (_, i) => start + i), moved: [] };
  }
  const low = below ? below.order : above.order - count - 1;
  const orders = Array.from({ length: count }, (_, i) => low + ((above.order - low) * (i + 1)) / (count + 1));
  const distinct = orders.every((order, i) => order > (orders[i - 1] ?? low) && order < above.order);
  if (distinct) return { orders, moved: [] };
  const moved = sorted.map((record, i) => [record, { ...record, order: i < index ? i + 1 : i + 1 + count }] as const);
  return {
    orders: Array.from({ length: count }, (_, i) => index + 1 + i),
    moved: moved.filter(([from, to]) => from.order !== to.order),
  };
}
