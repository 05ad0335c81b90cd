import type { Piece, SweptProfile } from '../setup-check.ts';
import { SLIVER_MM } from './sweep-piece.ts';

export interface MostWithin {
  /** mm; 0 where nothing is. */
  readonly most: number;
  /** The farthest real point that is known in the cells that lie wholly within. */
  readonly least: number;
  /** The middle of the worst cell's share of the stretch. Ask `reachWithin` for the place itself. */
  readonly at: number;
  readonly by: Piece | undefined;
}

/**
 * The greatest radius of a profile between two places along it. Cells that are cut by an end of the stretch count whole, so it is
 * never less than the truth; it is exact where the profile was asked for with `edges` there.
 *
 * @returns undefined when nothing of the profile lies within
 */
export function mostWithin(profile: SweptProfile, from: number, to: number): MostWithin | undefined {
  const { edges, most, least, by, pieces } = profile;
  let worst = -1;
  let known = 0;
  for (let i = firstCell(edges, from); i < most.length && to - edges[i]! > SLIVER_MM; i++) {
    if (edges[i + 1]! - from <= SLIVER_MM) continue;
    if (worst < 0 || most[i]! > most[worst]!) worst = i;
    if (edges[i]! >= from - SLIVER_MM && edges[i + 1]! <= to + SLIVER_MM) known = Math.max(known, least[i]!);
  }
  if (worst < 0) return undefined;
  const at = (Math.max(from, edges[worst]!) + Math.min(to, edges[worst + 1]!)) / 2;
  return { most: most[worst]!, least: known, at, by: pieces[by[worst]!] };
}

/** The first cell that ends beyond `from`. */
function firstCell(edges: Float64Array, from: number): number {
  let [low, high] = [0, Math.max(0, edges.length - 1)];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (edges[middle + 1]! <= from) low = middle + 1;
    else high = middle;
  }
  return low;
}
