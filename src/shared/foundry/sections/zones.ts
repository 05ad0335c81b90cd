import type { Pieces } from '../../base/pieces.ts';
import { type MetalCells, neighbourSteps } from './metal-cells.ts';

/**
 * Two thick places are one while the metal between them has nine tenths of the lesser one's modulus: each step towards the
 * feeder should be a tenth thicker (1 : 1.1 : 1.2; Wlodawer, Directional Solidification of Steel Castings, from memory).
 */
const SAME_ZONE = 0.9;
/** Less is noise of the cells. */
const LEAST_CELLS = 27;
/** Cells between two yields. */
const BATCH = 8_000;

/** Metal that freezes towards one thick place. */
export interface ZoneOfCells {
  /** The cell that freezes last in it. */
  readonly peak: number;
  readonly modulus: number;
}

/** Where two zones meet: the thickest way between them. */
export interface NeckOfCells {
  readonly zones: readonly [number, number];
  readonly cell: number;
  readonly modulus: number;
}

export interface ZonesOfCells {
  /** Largest modulus first. */
  readonly zones: readonly ZoneOfCells[];
  readonly necks: readonly NeckOfCells[];
  /** Zone of each cell. */
  readonly of: Int32Array;
}

/** Sets of cells that are joined; each is named by one of its cells. */
function createSets(count: number) {
  const parents = Int32Array.from({ length: count }, (_, i) => i);
  const find = (cell: number): number => {
    let root = cell;
    while (parents[root] !== root) root = parents[root]!;
    for (let at = cell; at !== root; ) {
      const next = parents[at]!;
      parents[at] = root;
      at = next;
    }
    return root;
  };
  return {
    find,
    join(from: number, to: number): void {
      parents[find(from)] = find(to);
    },
  };
}

/**
 * Parts a casting where it is thinnest between thick places: cells are taken from the thickest down, and where two heaps of
 * them first meet is the neck between them.
 */
export function* zonesOf(metal: MetalCells, moduli: Float64Array): Pieces<ZonesOfCells> {
  const { grid, count, placeOf, numberOf } = metal;
  const order = Int32Array.from({ length: count }, (_, i) => i).sort((a, b) => moduli[b]! - moduli[a]! || a - b);
  const steps = neighbourSteps(grid);
  const heaps = createSets(count);
  const zones = createSets(count);
  const taken = new Uint8Array(count);
  const peaks = new Int32Array(count);
  const sizes = new Int32Array(count);
  const necks: { readonly cells: readonly [number, number]; readonly cell: number }[] = [];

  for (const [rank, cell] of order.entries()) {
    if (rank % BATCH === 0) yield;
    const around = steps.map((step) => numberOf[placeOf[cell]! + step]!).filter((other) => other >= 0 && taken[other]);
    taken[cell] = 1;
    peaks[cell] = cell;
    sizes[cell] = 1;
    if (around.length === 0) continue;
    // the heap with the thickest place takes in the others
    around.sort((a, b) => moduli[peaks[heaps.find(b)]!]! - moduli[peaks[heaps.find(a)]!]! || a - b);
    const first = around[0]!;
    const nearest = around.reduce((best, one) => (moduli[one]! > moduli[best]! ? one : best));
    for (const other of around) {
      const [lesser, greater] = [heaps.find(other), heaps.find(first)];
      if (lesser === greater) continue;
      const peak = peaks[lesser]!;
      const isOne = moduli[cell]! >= SAME_ZONE * moduli[peak]! || sizes[lesser]! < LEAST_CELLS;
      if (isOne) zones.join(other, first);
      else necks.push({ cells: [peak, first], cell });
      heaps.join(lesser, greater);
      const root = heaps.find(greater);
      peaks[root] = peaks[greater]!;
      sizes[root] = sizes[lesser]! + sizes[greater]!;
    }
    const root = heaps.find(first);
    heaps.join(cell, root);
    sizes[heaps.find(root)]! += 1;
    zones.join(cell, nearest);
  }
  return named(count, moduli, zones.find, necks);
}

function named(
  count: number,
  moduli: Float64Array,
  find: (cell: number) => number,
  necks: readonly { readonly cells: readonly [number, number]; readonly cell: number }[],
): ZonesOfCells {
  const peakOf = new Map<number, number>();
  for (let cell = 0; cell < count; cell++) {
    const root = find(cell);
    const peak = peakOf.get(root);
    if (peak === undefined || moduli[cell]! > moduli[peak]!) peakOf.set(root, cell);
  }
  const roots = [...peakOf].sort(([, a], [, b]) => moduli[b]! - moduli[a]! || a - b);
  const indexOf = new Map(roots.map(([root], i) => [root, i]));
  const indexAt = (cell: number): number => indexOf.get(find(cell))!;
  return {
    zones: roots.map(([, peak]) => ({ peak, modulus: moduli[peak]! })),
    necks: necks.map(({ cells: [a, b], cell }) => ({
      zones: [indexAt(a), indexAt(b)],
      cell,
      modulus: moduli[cell]!,
    })),
    of: Int32Array.from({ length: count }, (_, cell) => indexAt(cell)),
  };
}
