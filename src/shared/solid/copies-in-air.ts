import type { BodyId } from '../base/ids.ts';
import { type Bounds, boundsOf, boundsOfCopy } from './bounds.ts';
import { SAME_MM } from './outline.ts';
import type { PlacedBody } from './placed.ts';

/**
 * How many copies of each body that takes away certainly meet no metal: their boxes overlap none of a body that adds before
 * them in the list. Bodies of which every copy may meet some are not in it.
 */
export function copiesInAir(bodies: readonly PlacedBody[]): ReadonlyMap<BodyId, number> {
  const counts = new Map<BodyId, number>();
  const metal: { readonly whole: Bounds; readonly copies: () => readonly Bounds[] }[] = [];
  for (const body of bodies) {
    const { shape, moves, record } = body;
    const whole = boundsOf(body);
    if (!shape || !whole) continue;
    if (record.adds) {
      let copies: readonly Bounds[] | undefined;
      metal.push({
        whole,
        copies: () => {
          copies ??= moves.map((move) => boundsOfCopy(shape, move));
          return copies;
        },
      });
      continue;
    }
    const near = metal.filter((one) => overlap(one.whole, whole));
    const inAir = moves.filter((move) => {
      const box = boundsOfCopy(shape, move);
      return !near.some((one) => overlap(one.whole, box) && one.copies().some((copy) => overlap(copy, box)));
    });
    if (inAir.length > 0) counts.set(record.id, inAir.length);
  }
  return counts;
}

const overlap = (a: Bounds, b: Bounds): boolean =>
  [0, 1, 2].every((k) => a.min[k]! < b.max[k]! - SAME_MM && b.min[k]! < a.max[k]! - SAME_MM);
